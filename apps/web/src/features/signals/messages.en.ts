export const messages = {
  title: 'Signals',
  lead: 'Parts, tools, lots, fixture positions and cavities that fail more than they should, most excess first.',
  none: 'Nothing fails more than it should',
  noneText:
    '{{tested}} combinations were looked at; none stands out beyond chance and beyond what such members usually differ by.',
  more_one: 'One more signal of less excess is not listed; narrow the filter to see it.',
  more_other: '{{count}} more signals of less excess are not listed; narrow the filter to see them.',
  meaning:
    '{{tested}} combinations in {{reports}} reports were looked at. On average at most {{rate}} of the signals are false alarms. A signal says where to look, not why; do not trust it where people name tools or lots only when they suspect them.',
  withoutExpectation_one: 'For one combination there is no production and no peer to compare with.',
  withoutExpectation_other: 'For {{count}} combinations there is no production and no peer to compare with.',
  reports_one: '{{count}} report',
  reports_other: '{{count}} reports',
  open_one: '{{count}} report: {{name}}',
  open_other: '{{count}} reports: {{name}}',
  basis: {
    exposure: 'expected from the terminals inserted; interval {{confidence}}',
    share: 'expected as an equal share of {{peers}}, because production says nothing of it; interval {{confidence}}',
  },
  since: {
    steady: 'no change in the weeks looked at',
    unknown: 'cannot be dated: too little production known',
  },
  back: 'was “not news” and has grown since',
  echoes_one: 'Explained by it: one more',
  echoes_other: 'Explained by it: {{count}} more',
  shared_one: '{{count}} of them in both.',
  shared_other: '{{count}} of them in both.',
  silence: {
    press: 'Not news',
    title: 'Not news: {{name}}',
    rule: 'It is hidden until the day you choose. It comes back earlier when the lower limit of its ratio rises above the ratio it has now. Everybody sees who silenced it and why.',
    reason: 'Why it is not news',
    until: 'Until',
    cancel: 'Cancel',
  },
  silenced: {
    title: 'Called “not news”',
    facts: '{{reason}} ({{by}}, until {{until}}; then {{observed}} reports, {{ratio}} times the expected)',
    end: 'Make it news again',
  },
};

declare global {
  interface MessageCatalogue {
    signals: typeof messages;
  }
}
