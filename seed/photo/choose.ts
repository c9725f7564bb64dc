import { truths } from '../scenario/scenario.ts';
import type { Filed } from '../tables/reports.ts';
import { faceSvg } from './face.ts';

/** A photo of a report, still to be drawn. */
export interface Picture {
  failureId: string;
  svg: string;
  caption: string;
}

const perTruth = 4;
const ofTheLatest = 18;

/** The latest reports of each planted truth and the latest late ones get a photo. `filed` is in the order of time. */
export function choosePictures(filed: readonly Filed[], anchor: number): Picture[] {
  const shown = filed.filter(({ report }) => report.cavities.length === 1 && report.knows.housing);
  const planted = truths(anchor).flatMap(({ key }) =>
    shown.filter(({ report }) => report.fault.truth === key).slice(-perTruth),
  );
  const late = shown.filter(({ report }) => report.finding.found >= 8).slice(-ofTheLatest);
  return [...new Set([...planted, ...late])].map(({ id, report }) => {
    const { housing } = report.fault.run.program;
    const [mark = ''] = report.cavities;
    return { failureId: id, svg: faceSvg(housing, mark, report.fault.cause), caption: `${housing.code} ${mark}` };
  });
}
