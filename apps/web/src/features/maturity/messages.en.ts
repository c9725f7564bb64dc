export const messages = {
  title: 'Field maturity',
  lead: 'How much of what is already built has failed at customers and in the field so far, and how much is still to come.',
  controls: { months: 'Build months', horizon: 'Forecast' },
  span_one: '{{count}} month',
  span_other: '{{count}} months',
  perMillion: 'reports per million units built',
  interval95: '95%',
  none: 'No reports from customers or the field yet',
  noneText: 'The triangle needs reports with the source customer or field and the day the part was built.',
  stat: {
    counted: 'Reports in the triangle',
    until: 'found up to {{day}}, the last full month',
    toCome: 'Still to come, all build months',
    standardError: 'standard error {{error}}',
    forecast_one: 'Expected in the next month',
    forecast_other: 'Expected in the next {{count}} months',
    forecastNote: 'from what is already built',
    left: 'Left out',
    short: 'expected counts are about {{share}} too low for want of build dates',
  },
  left: {
    no_build_date_one: '{{count}} report without the day it was built: it cannot be placed',
    no_build_date_other: '{{count}} reports without the day they were built: they cannot be placed',
    built_earlier_one:
      '{{count}} report of parts built before {{month}}: that build month was not watched from its start',
    built_earlier_other:
      '{{count}} reports of parts built before {{month}}: those build months were not watched from their start',
  },
  months: {
    title: 'Which build months fail more, once all their failures are in?',
    spoken:
      'Reports per million units by build month, so far and expected in the end; the table below holds the figures.',
    soFar: 'so far (hatched grey: too young to compare)',
    expected: 'expected in the end',
    interval: '95%, Poisson, the pattern of delay taken as known',
    words:
      'Compare build months by the point, never by the bar: young months simply have had less time to fail. Do not trust the points of hatched months that rest on few reports, nor any of them if failures now come in faster or slower than they used to.',
    caption: 'Build months, newest first. Hatched: less than 80% of the expected reports are in.',
    month: 'Build month',
    produced: 'Units built',
    reports: 'Reports so far',
    young: 'too young to be compared',
    maturity: 'Share reported',
    final: 'Expected in the end',
    error: 'Standard error',
    perMillion: 'Expected per million',
  },
  triangle: {
    label: 'Months-in-service triangle',
    caption:
      'Months-in-service triangle: reports by build month that had been found so many months after building, added up. Every number opens its reports.',
    corner: 'Built ↓ · months after →',
    cell: 'Built {{month}}, found up to {{age}} months after: {{count}} reports',
    words:
      'Read a row from left to right to see a build month age, a column from top to bottom to compare months at the same age. The expected final counts carry the older rows’ growth over to the younger ones (chain ladder, Mack’s standard error). The oldest age seen counts as the end: what comes later than that is missing.',
  },
  life: {
    title: {
      falls: 'How long do parts last? Failures come early and then grow rarer',
      rises: 'How long do parts last? They wear out: failures grow more frequent with age',
      steady: 'How long do parts last? Failures come at about the same rate at every age',
      unknown: 'How long do parts last?',
    },
    spoken: 'Share of the units built that has failed, by months in service, as counted and as fitted.',
    seen: 'as counted (Kaplan–Meier)',
    limits: 'its 95% limits',
    fitted: 'Weibull curve fitted',
    months: 'months since building',
    month_one: '{{count}} month',
    month_other: '{{count}} months',
    beyond_one: '{{count}} month (longer than anything seen)',
    beyond_other: '{{count}} months (longer than anything seen)',
    failed: 'Failed by then, per million units (Weibull)',
    caption: 'Share failed by months since building, from the fitted curve',
    words:
      'From {{reports}} failures among {{units}} units built, those still good counted up to their age (right censored).',
    shape: 'Weibull shape',
    grows: {
      falls: 'Below 1: faults that were in the part from the start, not wear.',
      rises: 'Above 1: wear or loosening with use.',
      steady: 'About 1: neither early faults nor wear stand out.',
    },
    distrust:
      'Time runs from building, not from first use. Do not trust the curve beyond the last step, nor where several causes are mixed: filter for one cause first.',
  },
  forecast: {
    title_one: 'How many failures will come in during the next month?',
    title_other: 'How many failures will come in during the next {{count}} months?',
    spoken: 'Expected reports in each coming month, with intervals.',
    expected: 'expected',
    axis: 'reports a month',
    words:
      'From units already built only; what is built from now on comes on top. Do not trust it when a fix or a new fault has changed the rate between build months.',
    rate: 'Over all build months, reports per million units in the end:',
  },
};

declare global {
  interface MessageCatalogue {
    maturity: typeof messages;
  }
}
