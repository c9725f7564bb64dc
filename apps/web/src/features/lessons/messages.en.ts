export const messages = {
  title: 'Lessons and read-across',
  lead: 'What closed cases taught, in neutral words, and what other plants ask this one to check.',
  asked: 'Asked of your plants',
  askedText:
    'A case was closed elsewhere. Say whether it applies here: then an action is opened. If it does not, say why.',
  noneAsked: 'Nothing asked',
  noneAskedText: 'When a case with the same tool type, part or practice is closed at another plant, it is asked here.',
  lessons: 'Lessons',
  search: 'Search the lessons',
  none: 'No lessons here',
  noneText: 'Lessons come from closed cases. Try fewer or other words.',
  more: 'More',
  from: '{{plant}}, {{cause}}, {{at}}',
  askedBy: '{{from}} asks {{plant}}, {{at}}, because of:',
  because: {
    tool_type: 'the same tool type',
    housing: 'the same housing',
    terminal: 'the same terminal',
    practice: 'the same practice',
  },
  problem: 'Problem',
  rootCause: 'Root cause',
  check: 'What to check',
  answer: 'Answer',
  answers: { applies: 'Applies: action', does_not_apply: 'Does not apply' },
  whatDone: 'What will be done',
  whyNot: 'Why it does not apply',
  owner: 'Who does it',
  due: 'Due',
  send: 'Answer',
  action: 'Open the action',
  offered: 'Learned before on something like this',
  like: {
    housing: 'same housing',
    terminal: 'same terminal',
    cause: 'same cause',
    effect: 'same effect',
    words: 'similar words',
  },
};

declare global {
  interface MessageCatalogue {
    lessons: typeof messages;
  }
}
