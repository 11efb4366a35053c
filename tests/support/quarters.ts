const width = 320;
const height = 240;
const colours = [
  [200, 30, 30],
  [30, 160, 30],
  [30, 30, 200],
  [240, 240, 240],
] as const;

/** Red, green over blue, white: any turn or mirror shows. */
export const quarters = {
  raw: { raw: { width, height, channels: 3 as const } },
  rgb: Uint8Array.from({ length: width * height * 3 }, (_, index) => {
    const pixel = Math.floor(index / 3);
    const quarter = (Math.floor(pixel / width) < height / 2 ? 0 : 2) + (pixel % width < width / 2 ? 0 : 1);
    return colours[quarter]![index % 3]!;
  }),
};
