export const messages = {
  stand: 'Where this review stands',
  keep: 'Begin this review',
  renew: 'Count the figures again',
  close: 'Close the review',
  closeQuestion:
    'The page stays as it is now: figures, decisions, state of the data. It is not changed any more; a correction is a new edition.',
  correct: 'Correct in a new edition',
  correctReason: 'What was wrong',
  correctHelp: 'The closed edition stays as it is; the new one has figures of now.',
  correctBegin: 'Begin the new edition',
  pdf: 'PDF for the plant',
  pdfOwn: 'PDF in my language',
  editions: 'Other editions',
  edition: 'Edition {{edition}}',
  newest: 'To the newest review',
  decision: {
    new: 'Write down a decision',
    title: 'What is decided',
    plant: 'Plant',
    note: 'Why, or what exactly',
    save: 'Write it down',
  },
  past: {
    title: 'Reviews that are kept',
    none: 'None is kept yet. The next one is ready on the first morning of the reporting week.',
    week: 'Week',
    of: 'Of',
    edition: 'Edition',
    decisions: 'Decisions',
    state: 'State',
    more: 'Show older ones',
  },
  mail: {
    title: 'By mail',
    about: 'Sent as a PDF at six on the first morning of the plant’s reporting week. Untick to be sent it no more.',
    group: 'The whole group',
  },
};

declare global {
  interface MessageCatalogue {
    review: typeof messages;
  }
}
