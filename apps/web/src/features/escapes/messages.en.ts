export const messages = {
  title: 'What slipped through',
  lead: 'Where faults were made, where they were found, which gates let them pass, and what that cost.',
  stat: {
    passedTwo: 'Passed two or more gates',
    ofKnown: '{{share}} of the reports with a known origin,',
    passedTwoBooked: 'Cost of those, booked and estimated',
    withoutOrigin: 'Without a known origin',
    withoutOriginNote: 'of {{total}}; they cannot be placed in the picture',
    open_one: 'Open {{count}} report',
    open_other: 'Open {{count}} reports',
  },
  weight: {
    label: 'Weighed by',
    reports: 'Reports',
    terminals: 'Terminals',
    booked: 'Booked cost',
    estimated: 'Estimated cost',
    unit: {
      reports: 'reports',
      terminals: 'failed terminals',
      booked: 'booked cost in {{currency}}',
      estimated: 'estimated cost in {{currency}}',
    },
  },
  flow: {
    title: 'How far did the faults travel?',
    spoken: 'Flow picture from the stage of origin to the stage found; the matrix below holds its figures.',
    arc: 'Made at {{origin}}, found at {{found}}: {{figure}}',
    here: 'Made and found at {{stage}}: {{figure}}',
    key: {
      here: 'found where it was made',
      one: 'passed one gate at most',
      many: 'passed two or more gates',
    },
  },
  matrix: {
    corner: 'Origin ↓ · found →',
    caption:
      'Origin by stage found, {{unit}}. The framed cells were found where they were made. Every cell opens its reports.',
    noOrigin: 'No origin yet',
    sum: 'Sum',
    cell: 'Made at {{origin}}, found at {{found}}: {{figure}}',
  },
  gates: {
    caption: 'How many of the faults that reached it did each gate find? Reports with a known origin.',
    stage: 'Gate',
    foundHere: 'Found here',
    foundLater: 'Found later',
    effectiveness: 'Effectiveness',
  },
  cost: {
    title: 'What did it cost?',
    booked: 'Booked',
    estimated: 'Estimated',
    apart: 'never added to the booked sum',
    avoidable: 'Avoidable',
    avoidableNote: 'cost where found less the cost at the first gate able to see it',
    without: 'Reports without any cost',
    openBooked: 'Open reports with booked cost',
    openEstimated: 'Open reports with an estimate',
    notComputable: {
      no_cause_one: 'Avoidable cost cannot be said for {{count}} report: it has no cause yet.',
      no_cause_other: 'Avoidable cost cannot be said for {{count}} reports: they have no cause yet.',
      no_origin_one: 'Avoidable cost cannot be said for {{count}} report: its origin is not known.',
      no_origin_other: 'Avoidable cost cannot be said for {{count}} reports: their origin is not known.',
      no_standard_cost_one:
        'Avoidable cost cannot be said for {{count}} report: no standard cost is on file for that gate.',
      no_standard_cost_other:
        'Avoidable cost cannot be said for {{count}} reports: no standard cost is on file for that gate.',
      no_cost_one: 'Avoidable cost cannot be said for {{count}} report: it has no cost.',
      no_cost_other: 'Avoidable cost cannot be said for {{count}} reports: they have no cost.',
    },
  },
  factor: {
    title: 'How much dearer does a fault get, stage by stage?',
    spoken:
      'Measured escalation factors against {{base}}, with the rule of ten as a yardstick; the table below holds them.',
    caption:
      'Cost by stage found. The rule of ten is common practice without a source: a yardstick, not a measurement.',
    stage: 'Stage found',
    reports: 'Reports',
    perTerminal: 'Booked per terminal (geometric mean)',
    from_one: 'from {{count}} report',
    from_other: 'from {{count}} reports',
    measured: 'Measured factor',
    ruleOfTen: 'Rule of ten (common practice)',
    axis: 'booked cost per terminal, as a multiple of {{base}}',
    interval: '95%, bootstrap',
  },
  category: {
    caption: 'Cost by category. Filled bars are booked, hatched bars are estimated.',
    name: 'Category',
    bars: 'Booked above, estimated below',
    standard: 'Standard cost, where no item was entered',
  },
};

declare global {
  interface MessageCatalogue {
    escapes: typeof messages;
  }
}
