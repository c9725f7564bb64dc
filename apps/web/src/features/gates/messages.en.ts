export const messages = {
  title: 'Where the gates leak',
  lead: 'How much of what reaches it each gate finds, what a fault costs by where it was made, and where better detection would pay most.',
  money: {
    label: 'Costs counted',
    booked: 'Booked costs only',
    withEstimates: 'Booked and estimated costs',
    bookedWords: 'booked costs',
    estimatedWords: 'booked and estimated costs: an estimate',
  },
  next: {
    label: 'Where the next money should go',
    clear: {
      money: 'The next money does most good at {{stage}} (probability {{chance}}).',
      point: 'One more point of detection is worth most at {{stage}} (probability {{chance}}).',
    },
    open: {
      money: 'The data do not tell these gates apart: {{stages}}. The next money does most good at one of them.',
      point:
        'The data do not tell these gates apart: {{stages}}. One more point of detection is worth most at one of them.',
    },
    noCost:
      'This is per point of detection, whatever a point costs. Say below what a point costs at every gate, and the gates are compared per money spent.',
  },
  stat: {
    reports: 'Reports with a known origin',
    reportsNote: 'found in the period',
    withoutOrigin: 'Without a known origin',
    open: 'Open the reports',
    maturity: 'Field faults of this period reported so far',
    pattern_one: 'by the delay of {{count}} field report, up to {{day}}',
    pattern_other: 'by the delay of {{count}} field reports, up to {{day}}',
    undated: 'Field reports without the day built',
    dated_one: '{{count}} has one; the share reported is lowered accordingly',
    dated_other: '{{count}} have one; the share reported is lowered accordingly',
  },
  table: {
    title: 'How much of what reaches it does each gate find?',
    spoken:
      'Effectiveness of every gate, as reported and with the field still to come; the table below holds the figures.',
    axis: 'share found of the faults that reach the gate',
    interval: '95%: Clopper–Pearson as reported; Beta draws with the field to come',
    words:
      'As reported: found here ÷ (found here + found later). The second figure takes the field faults of what was built in this period, also those that are still to be reported, so it does not flatter gates whose misses have not come back yet. Do not trust a gate whose faults often have no origin, or the second figure where few field reports show the delay.',
    caption: 'Gates in the order of the process. Counts open their reports; faults of unknown origin are not in them.',
    gate: 'Gate',
    foundHere: 'Found here',
    foundLater: 'Found later',
    raw: 'As reported',
    field: 'Field, built in the period',
    toCome: 'Field, still to come',
    matured: 'With the field to come',
    open: {
      foundHere: '{{count}} found at {{stage}}',
      foundLater: '{{count}} passed {{stage}} and were found later',
      fieldBuilt: '{{count}} built in the period, passed {{stage}} and reported from the field',
    },
  },
  worth: {
    title: 'What would one more point of detection save?',
    spoken:
      'Saving a year by one more percentage point found, gate by gate, with intervals; the table below holds the figures.',
    axis: 'saved a year by one more percentage point found',
    interval: '95%, seeded draws; costs taken as given',
    words:
      'A point more means that one in a hundred of the faults that reach the gate is found there instead of further on. Where intervals overlap, the gates cannot be ranked. Do not trust it for big steps: it is the worth of the next point, and all gates after it stay as they are.',
    caption: 'Worth of better detection. Type what a point costs a year at a gate to compare gates per money spent.',
    faults: 'Faults reaching it a year',
    onePoint: 'One more point saves a year',
    cost: 'A point costs a year',
    costOf: 'What one more point of detection costs a year at {{stage}}',
    perMoney: 'Saved per money spent',
    best: 'Probability of being best',
  },
  made: {
    title: 'What does one fault cost, by where it is made?',
    spoken: 'Expected cost of one fault by the stage that makes it, with intervals.',
    axis: 'expected cost of one fault made here',
    caption: 'Expected cost of one fault by the stage that makes it',
    stage: 'Made at',
    cost: 'Expected cost',
    field: 'Reaches the field',
    words:
      'Each gate finds its share, the rest goes on, and what passes all gates costs what the field costs (absorbing chain). Do not trust it where some kinds of fault are far harder to see than others: all faults at a gate count alike here. Filter for one cause then.',
  },
  found: {
    caption: 'What one fault costs where it is found: means of the reports found in the period that have a cost',
    stage: 'Found at',
    reports: 'Reports',
    standard: 'standard cost, nothing was found there',
    neighbour: 'no cost known here: that of the nearest gate',
    booked: 'Booked, mean',
    estimated: 'Estimated, mean',
  },
};

declare global {
  interface MessageCatalogue {
    gates: typeof messages;
  }
}
