export const messages = {
  skip: 'Skip to the content',
  index: 'Pages',
  more: 'More',
  account: 'Account of {{name}}',
  ownAccount: 'My account',
  signOut: 'Sign out',
  print: 'Print this page',
  sections: {
    now: 'Now',
    reports: 'Reports',
    analyses: 'Analyses',
    followUp: 'Follow-up',
    data: 'Data',
  },
  pages: {
    week: 'Week',
    review: 'Review',
    failures: 'Failures',
    record: 'Record',
    causes: 'Causes',
    signals: 'Signals',
    charts: 'What moved',
    escapes: 'Escapes',
    gates: 'Gates',
    maturity: 'Field maturity',
    whatIf: 'What-if',
    suggestion: 'Hit rate',
    force: 'Forces',
    complaints: 'Complaint desk',
    containment: 'Containment',
    actions: 'Actions',
    cases: '8D cases',
    lessons: 'Lessons',
    production: 'Production',
    imports: 'Imports',
    masterData: 'Master data',
    people: 'People',
    audit: 'Audit',
  },
  notFound: {
    title: 'There is no such page',
    text: 'The address may be mistyped or out of date.',
    home: 'To the week',
  },
};

declare global {
  interface MessageCatalogue {
    app: typeof messages;
  }
}
