/** Loops tied or slipped on together. Common practice, no source. */
const usualGroup = 4;

/**
 * Shares loops out into groups of about four, no two differing by more than one, the same from the left as from the
 * right wherever the count allows it.
 * @returns loops in each group, left to right.
 */
export function loopGroups(loops: number): readonly number[] {
  if (loops <= 0) return [];
  const near = Math.max(1, Math.round(loops / usualGroup));
  const evenly = [near, near + 1, near - 1].find(
    (groups) => groups >= 1 && (groups % 2 === 1 || (loops % groups) % 2 === 0),
  );
  const groups = evenly ?? near;
  const size = Math.floor(loops / groups);
  const sizes = Array.from({ length: groups }, () => size);
  // The larger groups stand in pairs about the middle; a single one left over stands in the middle itself.
  let larger = loops - size * groups;
  const half = Math.floor(groups / 2);
  if (groups % 2 === 1 && larger % 2 === 1) {
    sizes[half] = size + 1;
    larger -= 1;
  }
  for (let left = half - 1; larger > 0; left -= 1, larger -= 2) {
    sizes[left] = size + 1;
    if (larger > 1) sizes[groups - 1 - left] = size + 1;
  }
  return sizes;
}
