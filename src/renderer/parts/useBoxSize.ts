import { type RefObject, useLayoutEffect, useState } from 'react';

/** The inner size of an element in px, kept up with the window. Zero until it is laid out. */
export function useBoxSize(element: RefObject<HTMLElement | null>): {
  readonly width: number;
  readonly height: number;
} {
  const [size, setSize] = useState({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const target = element.current;
    if (target === null) return;
    const read = () => {
      const width = target.clientWidth;
      const height = target.clientHeight;
      setSize((before) => (before.width === width && before.height === height ? before : { width, height }));
    };
    read();
    const observer = new ResizeObserver(read);
    observer.observe(target);
    return () => observer.disconnect();
  }, [element]);
  return size;
}
