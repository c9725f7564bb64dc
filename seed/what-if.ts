/** Kept what-if scenarios: invented options, costs and ranges, computed by the service from the demo's own reports. */
import type { Input } from '#contracts/shared/endpoint.ts';
import type { WhatIfInput } from '#contracts/what-if.ts';
import type { PlantCode } from './group/plants.ts';

export interface ScenarioPlan {
  plant: PlantCode;
  name: string;
  note: string;
  input: Input<typeof WhatIfInput>;
}

export const scenarios: readonly ScenarioPlan[] = [
  {
    plant: 'LEJ',
    name: 'Zugentlastung und Prüfung am Ausgang',
    note: 'Spannen aus der Runde mit Fertigung und Entwicklung; der Versatz des Binders hat nicht geholfen.',
    input: {
      options: [
        {
          key: 'o1',
          kind: 'strain_relief',
          name: 'Zugentlastung auf der Zeichnung HX-13',
          onceMinor: 1_800_000,
          yearlyMinor: 240_000,
          effects: [{ cause: 'wire_dress', low: 0.4, likely: 0.65, high: 0.85 }],
        },
        {
          key: 'o2',
          kind: 'secondary_lock',
          name: 'Sekundärverriegelung nachrüsten',
          onceMinor: 6_500_000,
          yearlyMinor: 900_000,
          effects: [
            { cause: 'partial_seat', low: 0.5, likely: 0.75, high: 0.9 },
            { cause: 'wire_dress', low: 0, likely: 0.1, high: 0.3 },
          ],
        },
        {
          key: 'o3',
          kind: 'push_click_pull',
          name: 'Drück-Klick-Zieh-Prüfung',
          onceMinor: 150_000,
          yearlyMinor: 600_000,
          effects: [{ cause: 'partial_seat', low: 0.2, likely: 0.45, high: 0.7 }],
        },
      ],
      together: ['o1', 'o3'],
      horizonYears: 3,
      budgetMinor: 5_000_000,
      seed: 20_260_614,
    },
  },
  {
    plant: 'QRO',
    name: 'Pull check on the other lines, trays for leads',
    note: 'The check on L2 worked; the range is what the engineers expect elsewhere. Trays: supplier’s quote.',
    input: {
      options: [
        {
          key: 'o1',
          kind: 'push_click_pull',
          name: 'Push-click-pull check on L1, L3, L4',
          onceMinor: 4_000_000,
          yearlyMinor: 9_000_000,
          effects: [{ cause: 'partial_seat', low: 0.35, likely: 0.6, high: 0.8 }],
        },
        {
          key: 'o2',
          kind: 'lead_trays',
          name: 'Lead trays instead of bulk boxes',
          onceMinor: 22_000_000,
          yearlyMinor: 1_500_000,
          effects: [{ cause: 'handling', low: 0.3, likely: 0.55, high: 0.75 }],
        },
        {
          key: 'o3',
          kind: 'tool_service',
          name: 'Applicator service every 250 000 cycles',
          onceMinor: 0,
          yearlyMinor: 6_000_000,
          effects: [{ cause: 'tooling', low: 0.1, likely: 0.25, high: 0.5 }],
        },
      ],
      together: ['o1', 'o2'],
      horizonYears: 3,
      seed: 20_260_614,
    },
  },
];
