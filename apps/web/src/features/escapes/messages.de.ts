export const messages: MessageCatalogue['escapes'] = {
  title: 'Was durchgerutscht ist',
};
