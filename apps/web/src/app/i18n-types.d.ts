import 'i18next';

declare global {
  /** Each `messages.en.ts` adds its namespace here, so that every key is checked by the compiler. */
  interface MessageCatalogue {}
}

declare module 'i18next' {
  interface CustomTypeOptions {
    defaultNS: 'ui';
    resources: MessageCatalogue;
    returnNull: false;
  }
}
