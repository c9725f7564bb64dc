export const messages = {
  bell_one: '{{count}} unread notice',
  bell_other: '{{count}} unread notices',
  title: 'Notices',
  lead: 'What waits for you, newest first. Reminders come before the due day, on it, and every week after it.',
  which: 'Which notices',
  all: 'All',
  unread: 'Unread',
  markAll: 'Mark all as read',
  markOne: 'Mark as read',
  none: 'Nothing to tell',
  noneText: 'You are told here when something becomes yours, is due, or happened again.',
  more: 'Show more',
  settings: {
    mail: 'Mail me my notices too',
    mailHelp: 'In your language, once each.',
    noMail: 'No mail server is set for this service yet; notices stay inside the product.',
    feed: 'Your calendar program can show your open actions by due day. It reads them from a secret address.',
    feedSince: 'Made on {{at}}.',
    feedOnce: 'Copy this address now; it is shown once',
    feedAddress: 'Calendar address',
    copy: 'Copy the address',
    copied: 'Copied',
    make: 'Make a calendar address',
    renew: 'Renew the address',
    renewQuestion: 'Whoever knows the address can read your due dates. An address made before stops working.',
    close: 'Close the address',
    closeQuestion: 'Calendar programs that read this address stop showing your actions.',
  },
  mail: {
    title: 'Outgoing mail of this service',
    setUp: 'A mail server is set.',
    notSetUp: 'No mail server is set: give SMTP_URL, MAIL_FROM and PUBLIC_URL.',
    counts: 'Waiting: {{waiting}}. Given up after three days or refused: {{givenUp}}.',
    lastError: 'Last error: {{error}}',
    retry: 'Try again now',
  },
};

declare global {
  interface MessageCatalogue {
    notices: typeof messages;
  }
}
