export const messages: MessageCatalogue['ui'] = {
  product: 'Escape Ledger',
  problem: {
    heading: 'Das hat nicht geklappt',
    retry: 'Noch einmal versuchen',
    fields: 'Was zu berichtigen ist',
    code: 'Code: {{code}}',
    unreachable: 'Der Server ist nicht erreichbar. Prüfen Sie das Netz; es wurde nichts geändert.',
    unexpected_answer:
      'Der Server hat eine Antwort gegeben, die diese Seite nicht versteht. Laden Sie die Seite neu; melden Sie es der Administration, wenn es so bleibt.',
    outside_contract:
      'Server und Seite passen nicht zusammen. Laden Sie die Seite neu, um die aktuelle Fassung zu erhalten.',
  },
  loading: 'Wird geladen …',
  refreshing: 'Wird aktualisiert …',
};
