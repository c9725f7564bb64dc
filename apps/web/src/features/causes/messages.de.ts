export const messages: MessageCatalogue['causes'] = {
  title: 'Was falsch läuft',
};
