/** English words of an 8D case, used by the dashboard, by refusals and by the customer's document. */
import type {
  Correction,
  documentKinds,
  isIsNotAspects,
  Need,
  PartName,
  SignRole,
  TeamRole,
  TreeName,
} from './case-parts.ts';

type Labels<Word extends string> = Readonly<Record<Word, string>>;

export interface CaseTerms {
  /** D0 to D8 */
  readonly discipline: readonly string[];
  readonly part: Labels<PartName>;
  readonly need: Labels<Need>;
  readonly signRole: Labels<SignRole>;
  readonly teamRole: Labels<(typeof TeamRole.options)[number]>;
  readonly aspect: Labels<(typeof isIsNotAspects)[number]>;
  readonly tree: Labels<TreeName>;
  readonly against: Labels<(typeof Correction.shape.against.options)[number]>;
  readonly documentKind: Labels<(typeof documentKinds)[number]>;
  readonly document: Labels<
    | 'report'
    | 'number'
    | 'date'
    | 'customer'
    | 'reference'
    | 'part'
    | 'plant'
    | 'state'
    | 'open'
    | 'closed'
    | 'safety'
    | 'page'
    | 'of'
    | 'symptom'
    | 'emergency'
    | 'why'
    | 'name'
    | 'role'
    | 'company'
    | 'statement'
    | 'aspect'
    | 'is'
    | 'isNot'
    | 'difference'
    | 'change'
    | 'timeline'
    | 'containment'
    | 'verification'
    | 'cleanPoint'
    | 'cleanMark'
    | 'notNeeded'
    | 'rootCause'
    | 'escapePoint'
    | 'systemCause'
    | 'cause'
    | 'origin'
    | 'stage'
    | 'proof'
    | 'ruledOut'
    | 'chosen'
    | 'rejected'
    | 'undecided'
    | 'correction'
    | 'reason'
    | 'effectiveFrom'
    | 'actions'
    | 'action'
    | 'due'
    | 'actionState'
    | 'before'
    | 'after'
    | 'rate'
    | 'effect'
    | 'held'
    | 'notShownYet'
    | 'didNotHold'
    | 'interval'
    | 'prevention'
    | 'documents'
    | 'revision'
    | 'changedOn'
    | 'lesson'
    | 'closing'
    | 'thanks'
    | 'signed'
    | 'photos'
    | 'files'
    | 'notYet'
    | 'report8d'
    | 'finding'
    | 'photo'
    | 'file'
    | 'test'
    | 'event'
    | 'rootCauseEnd'
    | 'escapePointEnd'
    | 'systemCauseEnd'
    | 'decision'
    | 'withoutVerdict'
    | 'kind'
    | 'toolTypes'
    | 'housings'
    | 'terminals'
    | 'practice'
    | 'lessonTitle'
    | 'lessonProblem'
    | 'check'
  >;
  readonly actionState: Labels<'agreed' | 'under_way' | 'held_up' | 'carried_out' | 'verified' | 'given_up'>;
}

export const caseTerms: CaseTerms = {
  discipline: [
    'Plan and emergency response',
    'Team',
    'Problem',
    'Interim containment',
    'Root cause and escape point',
    'Corrections chosen',
    'Implemented and validated',
    'Prevention',
    'Closure',
  ],
  part: {
    plan: 'Plan and emergency response',
    team: 'Team',
    problem: 'Problem',
    timeline: 'Timeline',
    containment: 'Interim containment',
    occurrence: '5-Why: why it occurred',
    non_detection: '5-Why: why it was not detected',
    system: '5-Why: why the system allowed it',
    root_cause: 'Root cause and escape point',
    corrections: 'Corrections',
    validation: 'Implementation and validation',
    prevention: 'Prevention',
    reach: 'Read-across',
    lesson: 'Lesson',
    closure: 'Closure',
    document: 'Document for the customer',
  },
  need: {
    earlier_signed: 'signatures of the disciplines before it',
    symptom: 'the symptom',
    emergency: 'the emergency response',
    leader: 'a team leader',
    two_members: 'at least two people in the team',
    statement: 'the problem statement',
    is_is_not: 'what, where, when and extent, each with what it is and is not',
    timeline: 'at least one event on the timeline',
    containment: 'what contains it, with a containment or an action linked, or why none is needed',
    containment_verified: 'how it is known that the containment works',
    occurrence_tree: 'why it occurred, at least one step deep',
    non_detection_tree: 'why it was not detected, at least one step deep',
    system_tree: 'why the system allowed it, at least one step deep',
    ends_proved: 'proof at every end of the three trees',
    root_cause: 'the root cause: an end of the first tree that is not ruled out, its words, cause and stage',
    escape_point: 'the escape point: an end of the second tree that is not ruled out, its words and stage',
    system_cause: 'the cause in the system: an end of the third tree that is not ruled out, and its words',
    root_cause_proved: 'how the root cause was proved',
    correction_against_occurrence: 'a chosen correction against the occurrence',
    correction_against_escape: 'a chosen correction against the non-detection',
    corrections_decided: 'a decision with its reason on every correction',
    corrective_action: 'a corrective action',
    actions_verified: 'corrective actions verified, or given up, with one verified at least',
    verdict: 'a verdict that the actions held and none that did not, or why it is signed before the verdict',
    effective_from: 'what was put into effect and from which build day',
    prevention: 'what changes in systems and procedures',
    documents: 'documents changed, or why none does',
    reach: 'where else to look, or why nowhere',
    lesson: 'the lesson, or why there is none',
    closing_words: 'closing words',
    containment_closed: 'containments closed',
    actions_closed: 'actions verified or given up',
    customer_told: 'a document kept as sent to the customer',
  },
  signRole: { quality: 'Quality', plant_management: 'Plant management', product_safety: 'Product safety' },
  teamRole: {
    leader: 'Team leader',
    sponsor: 'Sponsor',
    quality: 'Quality',
    process: 'Process engineering',
    production: 'Production',
    design: 'Design',
    product_safety: 'Product safety',
    supplier: 'Supplier',
    customer: 'Customer',
    member: 'Member',
  },
  aspect: { what: 'What', where: 'Where', when: 'When', extent: 'Extent' },
  tree: {
    occurrence: 'Why it occurred',
    non_detection: 'Why it was not detected',
    system: 'Why the system allowed it',
  },
  against: { occurrence: 'Occurrence', non_detection: 'Non-detection', system: 'System' },
  documentKind: {
    fmea: 'FMEA',
    control_plan: 'Control plan',
    work_instruction: 'Work instruction',
    drawing: 'Drawing',
    maintenance_plan: 'Maintenance plan',
    training: 'Training',
    specification: 'Specification',
    other: 'Other',
  },
  document: {
    report: '8D report',
    number: 'Number',
    date: 'Date',
    customer: 'Customer',
    reference: 'Your reference',
    part: 'Part',
    plant: 'Plant',
    state: 'State',
    open: 'in progress',
    closed: 'closed',
    safety: 'Safety-relevant',
    page: 'Page',
    of: 'of',
    symptom: 'Symptom',
    emergency: 'Emergency response',
    why: 'Why an 8D',
    name: 'Name',
    role: 'Role',
    company: 'Company',
    statement: 'Problem statement',
    aspect: 'Aspect',
    is: 'Is',
    isNot: 'Is not',
    difference: 'What differs',
    change: 'What changed',
    timeline: 'Timeline',
    containment: 'Containment',
    verification: 'Verification',
    cleanPoint: 'Clean point (build day)',
    cleanMark: 'Mark on good parts',
    notNeeded: 'Not needed because',
    rootCause: 'Root cause',
    escapePoint: 'Escape point',
    systemCause: 'Cause in the system',
    cause: 'Cause',
    origin: 'Stage where it is made',
    stage: 'Stage that let it pass',
    proof: 'Proof',
    ruledOut: 'ruled out',
    chosen: 'chosen',
    rejected: 'rejected',
    undecided: 'open',
    correction: 'Correction',
    reason: 'Reason',
    effectiveFrom: 'In effect from build day',
    actions: 'Actions',
    action: 'Action',
    due: 'Due',
    actionState: 'State',
    before: 'Before',
    after: 'After',
    rate: 'Failures per million terminals inserted',
    effect: 'Effect of the action',
    held: 'The action held.',
    notShownYet: 'Not shown yet: production has not supplied what was planned as proof.',
    didNotHold: 'The action did not hold.',
    interval: 'Whiskers: 95 % interval',
    prevention: 'Systems and procedures',
    documents: 'Documents changed',
    revision: 'Revision',
    changedOn: 'Changed on',
    lesson: 'Lesson',
    closing: 'Result',
    thanks: 'Thanks to the team',
    signed: 'Signed',
    photos: 'Photos',
    files: 'Further files',
    notYet: 'In progress.',
    report8d: 'Report',
    finding: 'Finding',
    photo: 'Photo',
    file: 'File',
    test: 'Test',
    event: 'What happened',
    rootCauseEnd: 'End of the first tree',
    escapePointEnd: 'End of the second tree',
    systemCauseEnd: 'End of the third tree',
    decision: 'Decision',
    withoutVerdict: 'Signed before the verdict because',
    kind: 'Kind',
    toolTypes: 'Tool types',
    housings: 'Housings',
    terminals: 'Terminals',
    practice: 'Practice that every plant may have',
    lessonTitle: 'Title of the lesson',
    lessonProblem: 'Problem in neutral words',
    check: 'What another plant should check',
  },
  actionState: {
    agreed: 'agreed',
    under_way: 'under way',
    held_up: 'held up',
    carried_out: 'carried out',
    verified: 'verified',
    given_up: 'given up',
  },
};
