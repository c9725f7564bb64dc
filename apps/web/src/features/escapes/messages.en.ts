export const messages = {
  title: 'What slipped through',
};

declare global {
  interface MessageCatalogue {
    escapes: typeof messages;
  }
}
