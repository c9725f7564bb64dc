export const messages: MessageCatalogue['week'] = {
  title: 'Die Woche',
};
