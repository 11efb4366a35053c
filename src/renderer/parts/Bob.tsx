/** The plumb bob: under the current word of the bar, and under every planned line. Its cord meets it at (0, 0). */
export function Bob({ scale = 1 }: { readonly scale?: number }) {
  return (
    <path
      d="M-2.5 0h5v3h2.2L7 7.5C6.2 12 3 16.5 0 20.5-3 16.5-6.2 12-7 7.5L-4.7 3h2.2Z"
      transform={`scale(${scale})`}
      fill="currentColor"
    />
  );
}
