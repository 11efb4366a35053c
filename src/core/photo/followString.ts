import type { Photo } from './raster.ts';
import { fitStringProfile, type StringProfile } from './stringProfile.ts';

/** One look at a string. x, y loom mm under the pose it was followed with; px, py photo px. */
export interface StringSample {
  readonly x: number;
  readonly y: number;
  readonly px: number;
  readonly py: number;
  /** Standard uncertainty across the string, mm. */
  readonly sigma: number;
  readonly profile: StringProfile;
}

export interface FollowSettings {
  readonly pitch: number;
  readonly halfEnd: number;
  /** Unsharpness of the picture, mm. */
  readonly blur: number;
  /** mm between looks along the string. */
  readonly step: number;
  /** mm between the samples of a profile. */
  readonly fine: number;
}

type Map2 = (x: number, y: number) => { x: number; y: number };

/** Colours across a string at a height, averaged over a short stretch along it. */
function profileAcross(
  photo: Photo,
  toPhoto: Map2,
  x: number,
  y: number,
  slope: number,
  reach: number,
  fine: number,
): Float64Array | null {
  const count = 2 * Math.ceil(reach / fine) + 1;
  const half = (count - 1) / 2;
  const out = new Float64Array(3 * count);
  for (let row = -1; row <= 1; row++) {
    const yy = y + row * 0.4;
    const centre = x + slope * row * 0.4;
    const a = toPhoto(centre - half * fine, yy);
    const b = toPhoto(centre + half * fine, yy);
    if (a.x < 0 || a.y < 0 || b.x < 0 || b.y < 0) return null;
    if (Math.max(a.x, b.x) > photo.width - 2 || Math.max(a.y, b.y) > photo.height - 2) return null;
    for (let k = 0; k < count; k++) {
      const share = k / (count - 1);
      const px = a.x + share * (b.x - a.x);
      const py = a.y + share * (b.y - a.y);
      const x0 = px | 0;
      const y0 = py | 0;
      const fx = px - x0;
      const fy = py - y0;
      const at = (y0 * photo.width + x0) * 3;
      const below = at + photo.width * 3;
      for (let c = 0; c < 3; c++) {
        const top = photo.rgb[at + c]! * (1 - fx) + photo.rgb[at + 3 + c]! * fx;
        const bottom = photo.rgb[below + c]! * (1 - fx) + photo.rgb[below + 3 + c]! * fx;
        out[3 * k + c]! += (top * (1 - fy) + bottom * fy) / 3;
      }
    }
  }
  return out;
}

/** Looks at one place for a string near x. */
export function lookAtString(
  photo: Photo,
  toPhoto: Map2,
  x: number,
  y: number,
  slope: number,
  settings: FollowSettings,
  tolerance: number,
): StringSample | null {
  const { pitch, halfEnd, fine } = settings;
  // As far as the middle of the gaps, so that the neighbours stay out of it.
  const reach = Math.min(0.5 * pitch + 0.1 * halfEnd, halfEnd + 0.45 * (pitch - 2 * halfEnd) + 0.1);
  const colours = profileAcross(photo, toPhoto, x, y, slope, reach, fine);
  if (!colours) return null;
  const count = colours.length / 3;
  const from = (-(count - 1) / 2) * fine;
  const profile = fitStringProfile(colours, from, fine, halfEnd, settings.blur, 0, tolerance);
  if (!profile) return null;
  const seen = toPhoto(x + profile.centre, y);
  return { x: x + profile.centre, y, px: seen.x, py: seen.y, sigma: profile.sigma, profile };
}

/**
 * Follows one string from a notch along the loom, straight on with a slowly learnt slope, until it is lost for a while.
 * @param fromY where to begin, `toY` where to stop; loom mm, in either order.
 */
export function followString(
  photo: Photo,
  toPhoto: Map2,
  notch: number,
  fromY: number,
  toY: number,
  startSlope: number,
  settings: FollowSettings,
): StringSample[] {
  const direction = Math.sign(toY - fromY);
  const tolerance = Math.min(0.32 * settings.pitch, 0.75 * (settings.pitch - settings.halfEnd));
  const near = settings.halfEnd + settings.blur;
  const found: StringSample[] = [];
  let x = notch;
  let y = fromY;
  let slope = startSlope;
  let lost = 0;
  for (; direction * (toY - y) >= 0; y += direction * settings.step) {
    const sample = lookAtString(
      photo,
      toPhoto,
      x,
      y,
      slope,
      settings,
      found.length < 4 ? tolerance : Math.min(0.6 * tolerance, near),
    );
    if (sample && sample.profile.contrast > 4 && sample.sigma < 0.5) {
      const weight = Math.min(1, (0.15 / Math.max(0.03, sample.sigma)) ** 2);
      const off = sample.x - x;
      x += (found.length < 4 ? 0.5 : 0.2) * weight * off;
      slope += (((found.length < 4 ? 0 : 0.012) * weight * off) / settings.step) * direction;
      found.push(sample);
      lost = 0;
    } else lost += settings.step;
    if (lost > 14) break;
    x += slope * direction * settings.step;
  }
  return found;
}
