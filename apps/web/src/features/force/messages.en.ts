export const messages = {
  title: 'Do the terminals hold?',
  titleOf: '{{kind}} of {{terminal}}',
  lead: 'Retention and pull-out forces as measured, and what they say of all terminals made and measured like these. Those in most need stand first.',
  all: 'All terminals',
  reports: 'Failure reports of this terminal',
  enter: 'Enter a sample',
  filter: 'What this page shows',
  kind: 'Kind of force',
  both: 'Both',
  allTools: 'All tools',
  none: 'No force sample here',
  noneText:
    'Enter one, import a file of force samples, or send it through the API. Choose a longer period if there should be some.',
  terminal: 'Terminal',
  plant: 'Plant',
  tool: 'Tool',
  housing: 'Housing',
  wire: 'Wire',
  day: 'Day',
  parts: 'Housing, wire, reference',
  noTool: 'no tool named',
  otherTools: 'other tools',
  values: 'Values',
  mean: 'Mean',
  meanN: 'Mean, N',
  smallest: 'Smallest',
  smallestN: 'Smallest, N',
  minimum: 'Minimum',
  minimumN: 'Minimum, N',
  boundLabel: '95 % of all hold at least (95 % confidence)',
  boundN: '95 % hold at least, N',
  valuesBelow: 'Values below the minimum',
  belowOf: '{{below}} of {{values}}',
  belowMillion: 'Terminals below the minimum per million',
  newest: 'Newest',
  capability: 'Capability against the minimum',
  capabilityNone: 'only where the bound rests on a distribution',
  capabilityNote: '(mean − minimum) ÷ 3 standard deviations',
  deviation: 'standard deviation {{deviation}} N, smallest {{smallest}}',
  overview: { caption: 'Every measured terminal against its minimum' },
  tools: { caption: 'Tool by tool, the weakest first' },
  verdict: {
    title: 'Against the minimum',
    meets: 'holds it',
    fails: 'falls short of it',
    open: 'cannot be said yet',
    tool: 'falls short with {{tools}}',
  },
  notJudged: {
    no_minimum: 'no minimum on file',
    too_few: 'a single value',
    not_finite: 'all values equal',
  },
  notJudgedText: {
    no_minimum:
      'Nothing can be said against a minimum, because none is on file: give the terminal its minimum retention force, or the samples the minimum that drawing or standard asks for.',
    too_few: 'One value says nothing of the spread. Measure at least eight.',
    not_finite: 'All values are equal, so their spread is not known. Check the resolution of the instrument.',
  },
  meaning: {
    bound:
      'With 95 % confidence, 95 % of all terminals made and measured like these hold at least {{bound}} N. If that lies below the minimum, the sample does not prove the minimum, even when every single value holds it.',
    minimums:
      'The samples do not share one minimum: {{minimum}} N is the newest, others ask for {{others}} N. Look at them apart, by tool or period.',
    trust:
      'Do not trust a bound when the values come from several tools, wires or machines mixed together, when the run chart shows a drift, or when weak terminals were sorted out before measuring.',
  },
  method: {
    normal:
      'The Anderson–Darling test does not speak against a normal distribution (p {{p}}), so bound and share below are those of a normal distribution.',
    normal_untested:
      'With fewer than eight values a normal distribution cannot be tested; it is assumed. Measure more before relying on the bound.',
    log_normal:
      'The values are not normally distributed (Anderson–Darling p {{p}}), but their logarithms may be: bound and share below are computed on logarithms.',
    order_statistic:
      'The values are not normally distributed (Anderson–Darling p {{p}}), nor are their logarithms. The bound is read from the sorted values alone and holds for any distribution.',
    order_short:
      'The values are not normally distributed (Anderson–Darling p {{p}}), nor are their logarithms. A bound without a distribution takes at least {{needed}} values; there are {{count}}.',
  },
  run: {
    title: 'Does the level stay where it is?',
    spoken:
      '{{count}} forces in order of time: mean {{mean}}, smallest {{smallest}}. The table of samples below holds them.',
    axis: '{{kind}}, N',
    bound: '95/95 bound',
    interval: 'bound one-sided, 95 % of terminals, 95 % confidence; dotted: median',
    random: 'Nothing speaks against a random order: {{runs}} runs about the median (chance of so few {{p}}).',
    fewer:
      'The order is not random: only {{runs}} runs about the median (chance {{p}}). The level moved, drifted or differs between tools. Judge the stable stretches or the tools apart before believing the bound.',
    more: 'The values alternate: {{runs}} runs about the median (chance of so many {{p}}). Look for two machines, operators or jaws taking turns.',
    unknown: 'Too few different values to judge their order.',
    leftOut_one: '{{count}} older sample is judged with the others but not drawn.',
    leftOut_other: '{{count}} older samples are judged with the others but not drawn.',
  },
  samples: {
    caption: 'The samples, newest first, in the unit they were measured in',
    reports: 'open reports',
    reportsOf: 'Failure reports of {{terminal}}, {{tool}}',
    correct: 'Correct the sample of {{day}}',
  },
  correct: 'Correct',
  close: 'Close',
  void: {
    action: 'Take out',
    title: 'Take out the sample of {{day}}',
    reason: 'Why it does not count',
  },
  unit: 'Unit',
  reference: 'Reference',
  referenceHelp: 'Tells several samples of one day apart.',
  minimumIn: 'Minimum asked for, {{unit}}',
  minimumHelp: 'Empty: the terminal’s minimum retention force.',
  valuesIn: 'Values, {{unit}}',
  valuesHelp: 'One a line in the order of measurement; a column pasted from a sheet will do.',
  wrongValue: '“{{value}}” is no force above zero',
  tooManyValues: 'a sample holds at most 1,000 values',
  read_one: '{{count}} value read: {{mean}} {{unit}}.',
  read_other: '{{count}} values read: mean {{mean}} {{unit}}, smallest {{smallest}} {{unit}}.',
  note: 'Note',
  save: 'Save',
  saved: 'The sample is kept.',
};

declare global {
  interface MessageCatalogue {
    force: typeof messages;
  }
}
