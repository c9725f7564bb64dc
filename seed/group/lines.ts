import type { PlantCode } from './plants.ts';

export const lineCodes = ['L1', 'L2', 'L3', 'L4', 'L5'] as const;
export type LineCode = (typeof lineCodes)[number];

export const lineNames: Record<PlantCode, string> = {
  LEJ: 'Linie',
  POZ: 'Linia',
  QRO: 'Línea',
  SUZ: '产线',
  TOL: 'Line',
};

/** What each line builds, housing/terminal, most built first. */
export const linePrograms: Record<PlantCode, Record<LineCode, string>> = {
  LEJ: {
    L1: 'HX-01/TC-01C HX-03/TC-02C HX-05/TC-04L HX-08/TC-06L',
    L2: 'HX-09/TC-06L HX-07/TC-05L HX-11/TC-07C HX-04/TC-03C',
    L3: 'HX-22/TC-16L HX-24/TC-19C HX-20/TC-15C HX-25/TC-20L',
    L4: 'HX-13/TC-09L HX-15/TC-09L HX-26/TC-13L HX-16/TC-11C',
    L5: 'HX-13/TC-10L HX-26/TC-12L HX-14/TC-10L HX-19/TC-13L',
  },
  POZ: {
    L1: 'HX-09/TC-05L HX-08/TC-06L HX-02/TC-01C HX-12/TC-08C',
    L2: 'HX-03/TC-02C HX-01/TC-01C HX-04/TC-03C HX-06/TC-04L',
    L3: 'HX-13/TC-09L HX-15/TC-09L HX-14/TC-10L HX-17/TC-12L',
    L4: 'HX-17/TC-12L HX-21/TC-16L HX-22/TC-17L HX-18/TC-13L',
    L5: 'HX-11/TC-08C HX-10/TC-08C HX-20/TC-15C HX-16/TC-11C',
  },
  QRO: {
    L1: 'HX-08/TC-05L HX-07/TC-05L HX-09/TC-06L HX-02/TC-03C',
    L2: 'HX-01/TC-01C HX-04/TC-01C HX-03/TC-02C HX-12/TC-07C',
    L3: 'HX-13/TC-09L HX-15/TC-10L HX-22/TC-16L HX-14/TC-09L',
    L4: 'HX-05/TC-04L HX-08/TC-06L HX-06/TC-04L HX-19/TC-12L',
    L5: 'HX-11/TC-08C HX-10/TC-08C HX-24/TC-19C HX-23/TC-18L',
  },
  SUZ: {
    L1: 'HX-17/TC-12L HX-19/TC-14L HX-18/TC-12L HX-23/TC-18L',
    L2: 'HX-22/TC-17L HX-21/TC-16L HX-24/TC-19C HX-25/TC-20L',
    L3: 'HX-03/TC-02C HX-04/TC-02C HX-01/TC-01C HX-06/TC-04L',
    L4: 'HX-02/TC-01C HX-05/TC-04L HX-16/TC-11C HX-12/TC-07C',
    L5: 'HX-11/TC-07C HX-20/TC-15C HX-09/TC-06L HX-14/TC-10L',
  },
  TOL: {
    L1: 'HX-11/TC-08C HX-10/TC-08C HX-09/TC-06L HX-12/TC-08C',
    L2: 'HX-13/TC-10L HX-26/TC-13L HX-15/TC-10L HX-22/TC-17L',
    L3: 'HX-08/TC-06L HX-07/TC-06L HX-05/TC-04L HX-02/TC-03C',
    L4: 'HX-19/TC-14L HX-18/TC-14L HX-23/TC-18L HX-25/TC-20L',
    L5: 'HX-03/TC-02C HX-01/TC-03C HX-20/TC-15C HX-16/TC-11C',
  },
};

/** Share of a line's terminals that its first, second … program takes. */
export const programShares = [0.45, 0.27, 0.18, 0.1] as const;
