import { useWindowVirtualizer } from '@tanstack/react-virtual';
import { type RefObject, useEffect, useState } from 'react';

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
  const virtual = useWindowVirtualizer({
    count: rows.length,
    enabled: !whole,
    estimateSize: () => 44,
    overscan: 20,
    scrollMargin: body.current?.offsetTop ?? 0,
  });

  if (whole) return { visible: rows.map((row, index) => ({ row, index })), above: 0, below: 0, measure: undefined };
  const items = virtual.getVirtualItems();
  const margin = virtual.options.scrollMargin;
  return {
    visible: items.map(({ index }) => ({ row: rows[index]!, index })),
    above: (items[0]?.start ?? margin) - margin,
    below: virtual.getTotalSize() - ((items.at(-1)?.end ?? margin) - margin),
    measure: virtual.measureElement,
  };
};
