export const messages = {
  title: 'Production',
  lead: 'Units built and terminals inserted: what every rate is divided by. A plant without production has no rate.',
  enter: 'Enter production',
  filter: 'What this page shows',
  caption: 'Production, newest day first',
  none: 'No production here',
  noneText: 'Enter it, import it, or send it through the API. Until then no rate can be said for this selection.',
  all: 'all',
  day: 'Day',
  plant: 'Plant',
  line: 'Line',
  housing: 'Housing',
  terminal: 'Terminal',
  units: 'Units built',
  terminals: 'Terminals inserted',
  correct: 'Correct',
  correctRow: 'Correct {{day}}, {{plant}}',
  row: 'Row {{number}}',
  addRow: 'Another row',
  dropRow: 'Leave out row {{number}}',
  save: 'Save',
  saved: '{{added}} added, {{changed}} changed, {{same}} were the same.',
  cancel: 'Cancel',
  close: 'Close',
};

declare global {
  interface MessageCatalogue {
    production: typeof messages;
  }
}
