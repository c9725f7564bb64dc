import { useWindowVirtualizer } from '@tanstack/react-virtual';
import { type RefObject, useEffect, useLayoutEffect, useState } from 'react';

/** Shorter tables are drawn whole: find-in-page and print then need no help. */
const drawnWhole = 200;

const usePrinting = (): boolean => {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    const start = () => setPrinting(true);
    const end = () => setPrinting(false);
    addEventListener('beforeprint', start);
    addEventListener('afterprint', end);
    return () => {
      removeEventListener('beforeprint', start);
      removeEventListener('afterprint', end);
    };
  }, []);
  return printing;
};

/** Of a long list only the rows near the window, with the heights (px) left out above and below. */
export const useRowsInView = <Row>(rows: readonly Row[], body: RefObject<HTMLElement | null>) => {
  const printing = usePrinting();
  const whole = printing || rows.length <= drawnWhole;
  const [top, setTop] = useState(0);
  useLayoutEffect(() => {
    if (!whole && body.current) setTop(body.current.getBoundingClientRect().top + window.scrollY);
  }, [whole, body]);
  const virtual = useWindowVirtualizer({
    count: rows.length,
    enabled: !whole,
    estimateSize: () => 44,
    overscan: 20,
    scrollMargin: top,
  });

  if (whole) return { visible: rows.map((row, index) => ({ row, index })), above: 0, below: 0, measure: undefined };
  const items = virtual.getVirtualItems();
  return {
    visible: items.map(({ index }) => ({ row: rows[index]!, index })),
    above: (items[0]?.start ?? top) - top,
    below: virtual.getTotalSize() - ((items.at(-1)?.end ?? top) - top),
    measure: virtual.measureElement,
  };
};
