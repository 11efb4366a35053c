/** What can be drawn over the photograph; each can be put away. */
export const layerNames = ['plan', 'cloth', 'difference', 'strings', 'ribs', 'colours'] as const;
export type LayerName = (typeof layerNames)[number];
export type Layers = Readonly<Record<LayerName, boolean>>;

export const usualLayers: Layers = {
  plan: true,
  cloth: true,
  difference: true,
  strings: false,
  ribs: false,
  colours: false,
};
