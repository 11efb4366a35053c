import { type PointerEvent, type RefObject, useEffect, useRef } from 'react';
import { panned, type StageView, zoomedAt } from './stageView.ts';

interface PanZoom {
  readonly view: StageView;
  readonly setView: (view: StageView) => void;
  readonly limits: { readonly min: number; readonly max: number };
}

/** Wheel to zoom about the pointer, drag to move, two fingers for both. @returns handlers for the element. */
export function usePanZoom(element: RefObject<HTMLElement | null>, { view, setView, limits }: PanZoom) {
  const latest = useRef({ view, setView, limits });
  latest.current = { view, setView, limits };
  const fingers = useRef(new Map<number, { x: number; y: number }>());
  useEffect(() => {
    const target = element.current;
    if (target === null) return;
    // React listens to the wheel passively; the page behind must not scroll, so this one is our own.
    const wheel = (event: WheelEvent) => {
      event.preventDefault();
      const box = target.getBoundingClientRect();
      const { view: now, setView: set, limits: between } = latest.current;
      const factor = Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.0016));
      set(zoomedAt(now, factor, event.clientX - box.left, event.clientY - box.top, between));
    };
    target.addEventListener('wheel', wheel, { passive: false });
    return () => target.removeEventListener('wheel', wheel);
  }, [element]);
  return {
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      if (event.button !== 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      fingers.current.set(event.pointerId, { x: event.clientX, y: event.clientY });
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      const before = fingers.current.get(event.pointerId);
      if (before === undefined) return;
      const now = { x: event.clientX, y: event.clientY };
      const others = [...fingers.current].filter(([id]) => id !== event.pointerId);
      const { view: shown, setView: set, limits: between } = latest.current;
      const other = others[0]?.[1];
      if (other === undefined) set(panned(shown, now.x - before.x, now.y - before.y));
      else {
        const box = event.currentTarget.getBoundingClientRect();
        const factor =
          Math.hypot(now.x - other.x, now.y - other.y) / Math.hypot(before.x - other.x, before.y - other.y);
        const moved = panned(shown, (now.x - before.x) / 2, (now.y - before.y) / 2);
        const at = { x: (now.x + other.x) / 2 - box.left, y: (now.y + other.y) / 2 - box.top };
        set(zoomedAt(moved, factor, at.x, at.y, between));
      }
      fingers.current.set(event.pointerId, now);
    },
    onPointerUp: (event: PointerEvent<HTMLElement>) => {
      fingers.current.delete(event.pointerId);
    },
    onPointerCancel: (event: PointerEvent<HTMLElement>) => {
      fingers.current.delete(event.pointerId);
    },
  };
}
