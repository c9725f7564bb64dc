export const messages = {
  title: 'What moved',
  lead: 'Reports over time against what this process usually varies by, with actions, tool services and new lots on the time axis.',
  kind: {
    u: 'Rate by week (u)',
    c: 'Reports by week (c)',
    g: 'Terminals between reports (g)',
    t: 'Days between reports (t)',
  },
  figure: {
    u: 'Reports per million terminals, week by week',
    c: 'Reports, week by week',
    g: 'Terminals inserted from one report to the next',
    t: 'Days from one report to the next',
  },
  unit: {
    u: 'reports per million terminals',
    c: 'reports per week',
    g: 'terminals since the report before',
    t: 'days since the report before',
  },
  explain: {
    u: 'Inside the dashed limits the weeks differ by chance alone; outside, look for what changed.',
    c: 'Counts of full weeks, because production is not known: a busy week looks like a bad one.',
    g: 'Each point is one report; low points mean that faults follow each other quickly. Hours are not known, so reports of one day are spread evenly over it.',
    t: 'Each point is one report; low points mean that faults follow each other quickly, whatever was built meanwhile.',
  },
  because: {
    rare_with_exposure: 'Chosen because faults are rare ({{perWeek}} a week): gaps tell more than counts of 0 and 1.',
    rare_without_exposure:
      'Chosen because faults are rare ({{perWeek}} a week) and production is not known for most weeks.',
    enough_with_exposure: 'Chosen because there are enough reports ({{perWeek}} a week) and production is known.',
    enough_without_exposure:
      'Chosen because there are enough reports ({{perWeek}} a week) but production is not known for most weeks.',
  },
  corrected:
    'The weeks vary {{index}} times as much as counting alone explains, so the limits are widened for that (Laney’s correction).',
  chosenOtherwise: 'You chose this chart; the data suggest: {{kind}}.',
  falseAlarms: 'With these patterns a steady process raises a false alarm about every {{every}} points.',
  falseAlarmsUnknown: 'Each further pattern adds false alarms; for this choice no published figure says how many.',
  verdict: {
    now: 'The last point is beyond noise: {{patterns}}.',
    before_one: 'Beyond noise once, not at the last point.',
    before_other: 'Beyond noise at {{count}} points, not at the last.',
    quiet: 'Nothing beyond noise.',
  },
  withoutProduction_one: 'In one week no production was reported; a rate leaves it out.',
  withoutProduction_other: 'In {{count}} weeks no production was reported; rates leave them out.',
  wider:
    'Production is not reported by all that the filter names, so the rate is taken over all production of the plants, lines and parts chosen.',
  controls: {
    kind: 'Chart',
    auto: 'Suggested: {{kind}}',
    none: 'none',
    limits: 'Limits from',
    points: 'Points',
    rules: 'Patterns looked for',
    phases: 'New phases begin on',
    day: '2026-03-02',
    actions: 'New phase after an action aimed at this',
  },
  limits: {
    phase: 'all points of a phase',
    frozen: 'the first points, frozen',
    rolling: 'the points before, rolling',
    said: 'limits at three standard deviations of the chart; for gaps, the same chance on either side',
  },
  rule: {
    sudden_jump: 'one point beyond the limit',
    level_shift: '{{count}} in a row on one side',
    moderate_shift: 'two of three far out on one side',
    small_shift: 'four of five away on one side',
    drift: 'six in a row rising or falling',
    alternation: 'fourteen up and down in turn',
    too_even: 'fifteen too close to the centre',
    two_groups: 'eight in a row away from the centre',
  },
  reason: {
    too_few: 'Too few points for limits. Choose a longer period or a wider filter.',
    no_production:
      'No production was reported for this period, so there is no rate. Choose reports by week or days between reports.',
    no_reports: 'No reports in this period, or a phase without any.',
    not_finite: 'The figures are too extreme for limits.',
    too_many: 'Too many reports for a chart of gaps (more than 400). Choose weeks.',
    exceeds_production: 'More failures than production.',
    no_rate: 'An exchange rate is missing.',
    no_standard_cost: 'A standard cost is missing.',
    no_cost: 'There is no cost.',
  },
  spoken_one: '{{points}} points, one pattern beyond noise.',
  spoken_other: '{{points}} points, {{count}} patterns beyond noise.',
  centre: 'centre',
  limit: 'limit',
  lower: 'Lower limit',
  upper: 'Upper limit',
  noLimit: 'none',
  table: 'Points of the chart',
  column: {
    week: 'Week',
    day: 'Day',
    reports: 'Reports',
    patterns: 'Pattern ending here',
    what: 'What',
    name: 'Name',
  },
  phases: 'Phases: {{list}}.',
  phase: {
    start: 'from {{from}}',
    chosen: 'from {{from}} (chosen)',
    action: 'from {{from}} (after {{label}})',
  },
  markers_one: 'On the time axis: {{count}} mark',
  markers_other: 'On the time axis: {{count}} marks',
  markersTable: 'On the time axis',
  marker: {
    action: 'Action carried out',
    service: 'Tool serviced',
    reelLot: 'First use of a reel lot',
    housingLot: 'First use of a housing lot',
  },
  mark: { action: 'action', service: 'service', lot: 'lot' },
  left: {
    service: {
      too_wide: 'Tool services are drawn once the filter names a part, line, tool or cause.',
      too_many: 'Too many tool services to draw: narrow the filter.',
    },
    lot: {
      too_wide: 'New lots are drawn once the filter names a part, line, tool or cause.',
      too_many: 'Too many new lots to draw: narrow the filter.',
    },
  },
  cusum: {
    title: 'Small lasting shifts (cumulative sum)',
    unit: 'sum of deviations, in standard deviations of the chart',
    axis: 'standard deviations',
    up: 'Upwards',
    down: 'Downwards',
    since: 'Shift',
    worse: 'worse, probably since {{day}}',
    better: 'better, probably since {{day}}',
    quiet: 'No small lasting shift.',
    design:
      'Made for a shift of {{shift}} standard deviations: found after {{after}} points on average, with a false alarm every {{every}} points; signals beyond {{limit}}. Holds for independent points and limits that are well known: with few points trust it less.',
  },
};

declare global {
  interface MessageCatalogue {
    charts: typeof messages;
  }
}
