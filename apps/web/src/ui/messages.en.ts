export const messages = {
  product: 'Escape Ledger',
  problem: {
    heading: 'That did not work',
    retry: 'Try again',
    fields: 'What to correct',
    code: 'Code: {{code}}',
    unreachable: 'The server cannot be reached. Check the network; nothing was changed.',
    unexpected_answer:
      'The server gave an answer that this page does not understand. Reload the page; tell your administrator if it stays.',
    outside_contract: 'The server and this page do not fit together. Reload the page to get the current version.',
  },
  loading: 'Loading …',
  refreshing: 'Updating …',
};

declare global {
  interface MessageCatalogue {
    ui: typeof messages;
  }
}
