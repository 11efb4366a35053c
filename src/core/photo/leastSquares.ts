/** What a fit gives back. */
export interface LeastSquaresFit {
  readonly parameters: Float64Array;
  /** n × n row-major, inverse of JᵀJ at the solution: the covariance when residuals are in units of their sigma. */
  readonly covariance: Float64Array;
  /** Sum of squared (weighted) residuals. */
  readonly cost: number;
  readonly residuals: Float64Array;
  readonly rounds: number;
}

export interface LeastSquaresOptions {
  /** Steps for the numerical derivative, one per parameter. */
  readonly steps: readonly number[];
  readonly rounds?: number;
  /** Huber's limit in sigmas: larger residuals pull with constant force. Absent: plain least squares. */
  readonly huber?: number;
}

/**
 * Levenberg–Marquardt with central-difference derivatives. Residuals must already be divided by their sigma; prior
 * knowledge goes in as further residuals.
 */
export function leastSquares(
  start: ArrayLike<number>,
  residuals: (parameters: Float64Array) => Float64Array,
  options: LeastSquaresOptions,
): LeastSquaresFit {
  const n = start.length;
  let parameters = Float64Array.from(start);
  let current = residuals(parameters);
  let cost = robustCost(current, options.huber);
  let damping = 1e-3;
  let normal = new Float64Array(n * n);
  let round = 0;
  const limit = options.rounds ?? 40;
  for (; round < limit; round++) {
    const built = normalEquations(parameters, current, residuals, options);
    normal = built.normal;
    let improved = false;
    let small = false;
    for (let tries = 0; tries < 8; tries++) {
      const damped = normal.slice();
      for (let i = 0; i < n; i++) damped[i * n + i]! += damping * Math.max(1e-12, damped[i * n + i]!);
      const move = solveSymmetric(damped, built.gradient, n);
      if (!move) {
        damping *= 10;
        continue;
      }
      const next = parameters.map((value, i) => value - move[i]!);
      const tried = residuals(next);
      const nextCost = robustCost(tried, options.huber);
      if (nextCost <= cost && Number.isFinite(nextCost)) {
        small = cost - nextCost < 1e-10 * (1 + cost);
        parameters = next;
        current = tried;
        cost = nextCost;
        damping = Math.max(1e-12, damping * 0.2);
        improved = true;
        break;
      }
      damping *= 6;
    }
    if (!improved || small) break;
  }
  normal = normalEquations(parameters, current, residuals, options).normal;
  return { parameters, covariance: invertSymmetric(normal, n), cost, residuals: current, rounds: round };
}

const huberWeight = (residual: number, limit: number | undefined): number => {
  const size = Math.abs(residual);
  return limit === undefined || size <= limit ? 1 : limit / size;
};

function robustCost(residuals: Float64Array, limit: number | undefined): number {
  let sum = 0;
  for (const residual of residuals) {
    const size = Math.abs(residual);
    sum += limit === undefined || size <= limit ? size * size : limit * (2 * size - limit);
  }
  return sum;
}

function normalEquations(
  parameters: Float64Array,
  current: Float64Array,
  residuals: (parameters: Float64Array) => Float64Array,
  options: LeastSquaresOptions,
): { normal: Float64Array<ArrayBuffer>; gradient: Float64Array } {
  const n = parameters.length;
  const columns: Float64Array[] = [];
  for (let i = 0; i < n; i++) {
    const step = options.steps[i]!;
    const ahead = parameters.slice();
    const behind = parameters.slice();
    ahead[i]! += step;
    behind[i]! -= step;
    const a = residuals(ahead);
    const b = residuals(behind);
    columns.push(a.map((value, k) => (value - b[k]!) / (2 * step)));
  }
  const normal = new Float64Array(n * n);
  const gradient = new Float64Array(n);
  const weight = current.map((residual) => huberWeight(residual, options.huber));
  for (let i = 0; i < n; i++) {
    const ci = columns[i]!;
    for (let j = i; j < n; j++) {
      const cj = columns[j]!;
      let sum = 0;
      for (let k = 0; k < ci.length; k++) sum += weight[k]! * ci[k]! * cj[k]!;
      normal[i * n + j] = sum;
      normal[j * n + i] = sum;
    }
    let pull = 0;
    for (let k = 0; k < ci.length; k++) pull += weight[k]! * ci[k]! * current[k]!;
    gradient[i] = pull;
  }
  return { normal, gradient };
}

/** Lower Cholesky factor of a symmetric positive matrix, or null. */
export function cholesky(matrix: Float64Array, n: number): Float64Array | null {
  const factor = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= factor[i * n + k]! * factor[j * n + k]!;
      if (i === j) {
        if (!(sum > 0)) return null;
        factor[i * n + i] = Math.sqrt(sum);
      } else factor[i * n + j] = sum / factor[j * n + j]!;
    }
  }
  return factor;
}

/**
 * Solves A x = b for a symmetric positive A (n × n row-major); null when A is not positive. Rows and columns are first
 * scaled to a unit diagonal, for parameters of very different size.
 */
export function solveSymmetric(matrix: Float64Array, right: ArrayLike<number>, n: number): Float64Array | null {
  const scale = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const diagonal = matrix[i * n + i]!;
    if (!(diagonal > 0)) return null;
    scale[i] = 1 / Math.sqrt(diagonal);
  }
  const scaled = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) scaled[i * n + j] = matrix[i * n + j]! * scale[i]! * scale[j]! + (i === j ? 1e-12 : 0);
  }
  const factor = cholesky(scaled, n);
  if (!factor) return null;
  const x = Float64Array.from(right, (value, i) => value * scale[i]!);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i]! -= factor[i * n + k]! * x[k]!;
    x[i]! /= factor[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i]! -= factor[k * n + i]! * x[k]!;
    x[i]! /= factor[i * n + i]!;
  }
  for (let i = 0; i < n; i++) x[i]! *= scale[i]!;
  return x;
}

/** Inverse of a symmetric positive matrix; a matrix that is not positive gives infinities on the diagonal. */
export function invertSymmetric(matrix: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n);
  for (let column = 0; column < n; column++) {
    const unit = new Float64Array(n);
    unit[column] = 1;
    const x = solveSymmetric(matrix, unit, n);
    for (let row = 0; row < n; row++) {
      inverse[row * n + column] = x ? x[row]! : row === column ? Number.POSITIVE_INFINITY : 0;
    }
  }
  return inverse;
}
