import { describe, expect, it } from 'vitest';
import { adviceFor, type Frame, frameQuality, toFrame } from '../../src/renderer/screens/check/frameQuality.ts';

/** Upright stripes like bare strings: `edge` is how many px a string takes to fade. */
function strings(edge: number, shift = 0, dark = 60, bright = 200): Frame {
  const width = 120;
  const height = 40;
  const light = new Uint8Array(width * height);
  for (let at = 0; at < light.length; at++) {
    const phase = (((at % width) + shift) % 12) - 6;
    const share = Math.min(1, Math.max(0, 0.5 + (3 - Math.abs(phase)) / edge));
    light[at] = dark + (bright - dark) * share;
  }
  return { width, height, light };
}
const advice = (frame: Frame, before: Frame | null) => adviceFor(frameQuality(frame, before, frame));

/** The same strings out of focus: nothing but a slow wave is left of them. */
function blurred(): Frame {
  const light = new Uint8Array(120 * 40).map((_, at) => 130 + 60 * Math.cos(((at % 120) * 2 * Math.PI) / 24));
  return { width: 120, height: 40, light };
}

describe('advice on the live picture', () => {
  it('is good when it is still, crisp and lit', () => {
    expect(advice(strings(0.5), strings(0.5))).toBe('good');
  });
  it('waits for a second look before calling anything still', () => {
    expect(advice(strings(0.5), null)).toBe('moving');
  });
  it('sees the camera move', () => {
    expect(advice(strings(0.5, 3), strings(0.5))).toBe('moving');
  });
  it('lets a lamp flicker and the camera grain, and still calls it still', () => {
    const grained = (seed: number): Frame => {
      const frame = strings(0.5);
      let state = seed;
      const light = frame.light.map((each) => {
        state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
        return each + ((state >> 16) % 9) - 4 + (seed % 2) * 12;
      });
      return { ...frame, light };
    };
    expect(advice(grained(8), grained(3))).toBe('good');
  });
  it('sees strings that are not crisp', () => {
    expect(advice(blurred(), blurred())).toBe('blurred');
  });
  it('sees too little and too much light', () => {
    expect(advice(strings(0.5, 0, 5, 40), strings(0.5, 0, 5, 40))).toBe('dark');
    expect(advice(strings(0.5, 0, 80, 255), strings(0.5, 0, 80, 255))).toBe('bright');
  });
  it('weighs green most, as the eye does', () => {
    const frame = toFrame(new Uint8ClampedArray([255, 0, 0, 255, 0, 255, 0, 255, 0, 0, 255, 255]), 3, 1);
    expect([...frame.light]).toEqual([54, 182, 18]);
  });
});
