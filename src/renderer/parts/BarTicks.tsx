/** Quarter-inch notches drawn at double size: 12.7 px apart along the foot of the bar. */
export function BarTicks() {
  return (
    <svg className="bar-ticks" aria-hidden="true" width="100%" height="8">
      <defs>
        <pattern id="bar-notches" width="12.7" height="8" patternUnits="userSpaceOnUse" x="5.5">
          <path d="M.7 0V8" stroke="var(--edge)" strokeWidth="1.4" />
        </pattern>
      </defs>
      <rect width="100%" height="8" fill="url(#bar-notches)" />
    </svg>
  );
}
