export const messages = {
  title: 'What goes wrong',
};

declare global {
  interface MessageCatalogue {
    causes: typeof messages;
  }
}
