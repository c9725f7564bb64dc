import type { Report, ReportInput } from '#contracts/failures.ts';

export const blankReport = (plantId: string, foundOn: string): ReportInput => ({
  plantId,
  foundOn,
  externalRef: null,
  foundAt: null,
  builtOn: null,
  lineId: null,
  station: null,
  shift: null,
  stageId: null,
  found: 'electrical_test',
  source: 'line',
  housingId: null,
  terminalId: null,
  wireId: null,
  toolIds: [],
  fixturePosition: null,
  cavities: [],
  reelLot: null,
  housingLot: null,
  serialFrom: null,
  serialTo: null,
  customerId: null,
  customerRef: null,
  effect: null,
  quantityFound: 1,
  quantityInspected: null,
  lockState: 'unknown',
  disposition: 'pending',
  safety: false,
  note: null,
});

/** The fields of a report that its sender states. */
export const inputOf = (report: Report): ReportInput => {
  const blank = blankReport(report.plantId, report.foundOn);
  const stated = Object.keys(blank).map((name) => [name, report[name as keyof ReportInput]]);
  return Object.fromEntries(stated) as ReportInput;
};
