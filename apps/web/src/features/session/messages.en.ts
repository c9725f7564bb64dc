export const messages = {
  email: 'E-mail address',
  password: 'Password',
  showPassword: 'Show the password',
  language: 'Language',
  signIn: { title: 'Sign in', submit: 'Sign in' },
  firstPassword: {
    title: 'Choose your own password',
    text: 'The password you signed in with was set by someone else. Choose one that only you know.',
  },
  newPassword: {
    current: 'Password until now',
    next: 'New password',
    help: 'At least 12 characters; a few unrelated words are good.',
    again: 'New password once more',
    short: 'The new password needs at least 12 characters.',
    differs: 'The two new passwords differ.',
    submit: 'Change the password',
    done: 'The password is changed. Your other sessions were ended.',
  },
  account: {
    notices: 'Notices and calendar',
    title: 'My account',
    preferences: 'Name and language',
    password: 'Password',
    name: 'Name',
    save: 'Save',
    saved: 'Saved.',
    roles: 'Roles',
    everyPlant: 'all plants',
  },
};

declare global {
  interface MessageCatalogue {
    session: typeof messages;
  }
}
