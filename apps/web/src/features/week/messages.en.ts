export const messages = {
  title: 'The week',
};

declare global {
  interface MessageCatalogue {
    week: typeof messages;
  }
}
