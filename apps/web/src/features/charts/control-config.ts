/** A control chart: values, centre and limits by phase, and marks on the time axis. Pure. */
import type { ChartConfiguration } from 'chart.js';
import type { Charts, Marker } from '#contracts/charts.ts';
import { ink } from '#web/app/theme.ts';

type Point = Charts['points'][number];

interface Words {
  labels: readonly string[];
  value: string;
  centre: string;
  limits: string;
  markers: Readonly<Record<Marker['kind'], string>>;
}

const colourOf: Record<Marker['kind'], string> = {
  action: ink.better,
  service: ink.booked,
  reelLot: ink.estimated,
  housingLot: ink.estimated,
};

/** The point that a mark stands before: the first that ends after its day. */
export const placeOf = (points: readonly Pick<Point, 'to'>[], day: string): number | null => {
  const place = points.findIndex(({ to }) => to > day);
  return place < 0 ? null : place;
};

/** Marks that share a point share a line. */
export function marksAt(points: readonly Pick<Point, 'to'>[], markers: readonly Marker[]): Map<number, Marker[]> {
  const places = new Map<number, Marker[]>();
  for (const marker of markers) {
    const place = placeOf(points, marker.day);
    if (place !== null) places.set(place, [...(places.get(place) ?? []), marker]);
  }
  return places;
}

const line = (label: string, data: (number | null)[], colour: string, dash: number[]) => ({
  label,
  data,
  borderColor: colour,
  backgroundColor: colour,
  borderDash: dash,
  borderWidth: 1.5,
  pointRadius: 0,
  pointHitRadius: 0,
  stepped: 'middle' as const,
  spanGaps: false,
});

export function controlConfig(
  { points, markers }: Pick<Charts, 'points' | 'markers'>,
  words: Words,
  write: (value: number) => string,
): ChartConfiguration<'line', (number | null)[], string> {
  const marks = [...marksAt(points, markers)];
  return {
    type: 'line',
    data: {
      labels: [...words.labels],
      datasets: [
        {
          label: words.value,
          data: points.map(({ value }) => value),
          borderColor: ink.strong,
          backgroundColor: points.map(({ rules }) => (rules.length > 0 ? ink.worse : ink.strong)),
          pointStyle: points.map(({ rules }) => (rules.length > 0 ? 'rectRot' : 'circle')),
          pointRadius: points.map(({ rules }) => (rules.length > 0 ? 6 : 3)),
          borderWidth: 1,
        },
        line(
          words.centre,
          points.map(({ centre }) => centre),
          ink.booked,
          [],
        ),
        line(
          words.limits,
          points.map(({ high }) => high),
          ink.worse,
          [6, 5],
        ),
        line(
          words.limits,
          points.map(({ low }) => low),
          ink.worse,
          [6, 5],
        ),
      ],
    },
    options: {
      scales: {
        x: { grid: { display: false }, offset: true, ticks: { maxTicksLimit: 16 } },
        y: {
          beginAtZero: true,
          title: { display: true, text: words.value },
          ticks: { callback: (tick) => write(Number(tick)) },
        },
      },
      plugins: {
        legend: { display: false },
        annotation: {
          annotations: Object.fromEntries(
            marks.map(([place, those]) => [
              `mark-${place}`,
              {
                type: 'line' as const,
                xMin: place - 0.5,
                xMax: place - 0.5,
                borderColor: colourOf[those[0]!.kind],
                borderDash: [2, 3],
                borderWidth: 1.5,
                label: {
                  display: marks.length <= 12,
                  content: [...new Set(those.map(({ kind }) => words.markers[kind]))].join(' '),
                  position: 'start' as const,
                  backgroundColor: ink.sheet,
                  color: colourOf[those[0]!.kind],
                  padding: 1,
                },
              },
            ]),
          ),
        },
        tooltip: { callbacks: { label: ({ parsed, dataset }) => `${dataset.label}: ${write(parsed.y ?? 0)}` } },
      },
    },
  };
}
