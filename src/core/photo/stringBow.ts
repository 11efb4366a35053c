import { type Measurement, measurement } from '../model/measurement.ts';
import { invertSymmetric, solveSymmetric } from './leastSquares.ts';
import type { StringTrack } from './loomPose.ts';
import { median } from './statistics.ts';

/** How one bare string runs from the cloth to the bar. */
export interface StringBow {
  /** Largest sideways departure from the straight between cloth and bar, mm, positive to the right. */
  readonly bow: Measurement;
  /** Where it leaves the cloth and where it meets the line of the notches, loom x, mm. */
  readonly atFell: number;
  readonly atBar: number;
}

/** Next to the fell a string leans on the weft, mm. */
const SKIRT = 2;
/** It must be followed at least so near to the cloth and to the bar, shares of its bare length, by so many looks. */
const LOWEST = 0.35;
const HIGHEST = 0.8;
const FEWEST = 8;
/** Shorter bare strings than this have no room to bow, mm. */
const SHORTEST = 25;
/** Looks 1.5 mm apart see the same twist and shade: this many say no more than one. */
const ALIKE = 3;
/** Light from one side and the string's own shape bend what is seen by this much, mm. */
const FLOOR = 0.05;
/** No string hangs in an exact parabola: its bow is known to this share of itself. */
const SHAPE = 0.06;
const ROUNDS = 10;
/** So large a share of the looks must lie this near to one course, mm, or something else was followed here and there. */
const AGREEING = 0.8;
const NEAR = 0.3;

/**
 * The bow of a bare string, by weighted least squares that let go of far looks: straight from fell to bar, and a
 * parabola over it, as a slack string hangs to first order. Only what goes sideways is seen in a picture from above; a
 * string that sags towards the table isn't.
 * @param bare looks at the string, loom mm. @param fellY, @param topY loom y of the cloth's edge and of the notches.
 * @returns null where the string was not followed over enough of its length.
 */
export function stringBow(bare: StringTrack['bare'], fellY: number, topY: number): StringBow | null {
  const length = topY - fellY;
  if (length < SHORTEST) return null;
  const looks = bare.flatMap((look) => (look.y > fellY + SKIRT ? [{ ...look, t: (look.y - fellY) / length }] : []));
  const shares = looks.map((look) => look.t);
  if (looks.length < FEWEST || Math.min(...shares) > LOWEST || Math.max(...shares) < HIGHEST) return null;
  const sigmas = looks.map((look) => Math.hypot(look.sigma, FLOOR));
  let say = sigmas.map(() => 1);
  let normal: Float64Array = new Float64Array(9);
  let course: Float64Array = new Float64Array(3);
  let misfit = 1;
  let agreeing = 0;
  for (let round = 0; round < ROUNDS; round++) {
    normal = new Float64Array(9);
    const right = new Float64Array(3);
    looks.forEach(({ t, x }, k) => {
      const weight = say[k]! / sigmas[k]! ** 2;
      const basis = shapes(t);
      for (let i = 0; i < 3; i++) {
        right[i]! += weight * basis[i]! * x;
        for (let j = 0; j < 3; j++) normal[i * 3 + j]! += weight * basis[i]! * basis[j]!;
      }
    });
    const solved = solveSymmetric(normal, right, 3);
    if (!solved) return null;
    course = Float64Array.from(solved);
    const off = looks.map(({ t, x }, k) => {
      const basis = shapes(t);
      return Math.abs(x - course[0]! * basis[0]! - course[1]! * basis[1]! - course[2]! * basis[2]!) / sigmas[k]!;
    });
    agreeing = off.filter((one, k) => one * sigmas[k]! < NEAR).length / off.length;
    // 1.4826 makes a standard deviation of the middle distance.
    misfit = Math.max(1, 1.4826 * median(off));
    say = off.map((one) => 1 / (1 + (one / (3 * misfit)) ** 2));
  }
  if (agreeing < AGREEING) return null;
  const spread = invertSymmetric(normal, 3)[8]!;
  const sigma = Math.hypot(FLOOR, SHAPE * course[2]!, misfit * Math.sqrt(ALIKE * spread));
  return { bow: measurement(course[2]!, sigma, looks.length, 'bare string'), atFell: course[0]!, atBar: course[1]! };
}

/** At a share of the way up: the place at the fell, the place at the bar, and the bow, 1 in the middle. */
const shapes = (t: number): [number, number, number] => [1 - t, t, 4 * t * (1 - t)];
