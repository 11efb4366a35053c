import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../src/core/photo/leastSquares.ts';

// JCGM 100:2008, examples H.3 and H.2 (data from memory; recomputed outputs agree with the published ones).
describe('least squares with covariance', () => {
  it('fits the thermometer calibration of H.3', () => {
    const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
    const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
    const fit = leastSquares([0, 0], (v) => Float64Array.from(t, (at, k) => v[0]! + v[1]! * (at - 20) - b[k]!), {
      steps: [1e-4, 1e-4],
    });
    const variance = fit.cost / (t.length - 2);
    const u1 = Math.sqrt(variance * fit.covariance[0]!);
    const u2 = Math.sqrt(variance * fit.covariance[3]!);
    const r = fit.covariance[1]! / Math.sqrt(fit.covariance[0]! * fit.covariance[3]!);
    expect(fit.parameters[0]).toBeCloseTo(-0.1712, 4);
    expect(u1).toBeCloseTo(0.0029, 4);
    expect(fit.parameters[1]).toBeCloseTo(0.00218, 5);
    expect(u2).toBeCloseTo(0.00067, 5);
    expect(r).toBeCloseTo(-0.93, 3);
    expect(Math.sqrt(variance)).toBeCloseTo(0.0035, 4);
    const at30 = fit.parameters[0]! + 10 * fit.parameters[1]!;
    expect(at30).toBeCloseTo(-0.1494, 4);
    expect(Math.sqrt(u1 ** 2 + 100 * u2 ** 2 + 20 * u1 * u2 * r)).toBeCloseTo(0.0041, 4);
  });

  it('carries correlation through the resistance and reactance of H.2', () => {
    const V = [5.007, 4.994, 5.005, 4.99, 4.999];
    const I = [19.663, 19.639, 19.64, 19.685, 19.678].map((value) => value / 1000);
    const phi = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
    const rows = [V, I, phi];
    const mean = rows.map((row) => row.reduce((sum, value) => sum + value, 0) / 5);
    const cov = rows.map((a, i) =>
      rows.map((b, j) => a.reduce((sum, value, k) => sum + (value - mean[i]!) * (b[k]! - mean[j]!), 0) / 20),
    );
    // Residuals whitened by the inverse Cholesky factor of the covariance of the three means.
    const l11 = Math.sqrt(cov[0]![0]!);
    const l21 = cov[1]![0]! / l11;
    const l22 = Math.sqrt(cov[1]![1]! - l21 ** 2);
    const l31 = cov[2]![0]! / l11;
    const l32 = (cov[2]![1]! - l31 * l21) / l22;
    const l33 = Math.sqrt(cov[2]![2]! - l31 ** 2 - l32 ** 2);
    const fit = leastSquares(
      [120, 200, 0.02],
      ([R, X, current]) => {
        const off = [current! * Math.hypot(R!, X!) - mean[0]!, current! - mean[1]!, Math.atan2(X!, R!) - mean[2]!];
        const w1 = off[0]! / l11;
        const w2 = (off[1]! - l21 * w1) / l22;
        return Float64Array.of(w1, w2, (off[2]! - l31 * w1 - l32 * w2) / l33);
      },
      { steps: [1e-3, 1e-3, 1e-7] },
    );
    const u = (k: number) => Math.sqrt(fit.covariance[4 * k]!);
    expect(fit.parameters[0]).toBeCloseTo(127.732, 3);
    expect(fit.parameters[1]).toBeCloseTo(219.847, 3);
    expect(u(0)).toBeCloseTo(0.071, 3);
    expect(u(1)).toBeCloseTo(0.2956, 3);
    expect(fit.covariance[1]! / (u(0) * u(1))).toBeCloseTo(-0.588, 3);
  });
});
