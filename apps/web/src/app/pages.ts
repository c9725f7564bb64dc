/** The thumb index: the pages a person may open, by section, in the order of the work. */
import {
  IconArrowsSplit2,
  IconBarrierBlock,
  IconBellRinging,
  IconBoxMultiple,
  IconBulb,
  IconCalculator,
  IconCalendarWeek,
  IconChartBar,
  IconChartDots,
  IconClipboardCheck,
  IconFileImport,
  IconFilter,
  IconGauge,
  IconHistory,
  IconHourglass,
  IconListCheck,
  IconListDetails,
  IconMessageReport,
  IconPencilPlus,
  IconSitemap,
  IconStack2,
  IconTargetArrow,
  IconUsers,
} from '@tabler/icons-react';
import type { LinkProps } from '@tanstack/react-router';
import type { Permission } from '#contracts/permissions.ts';
import type { messages } from './messages.en.ts';

export const sections = ['now', 'reports', 'analyses', 'followUp', 'data'] as const;

export interface PageEntry {
  readonly to: LinkProps['to'];
  readonly section: (typeof sections)[number];
  readonly label: keyof typeof messages.pages;
  readonly icon: typeof IconCalendarWeek;
  readonly permission: Permission;
}

export const pages: readonly PageEntry[] = [
  { to: '/', section: 'now', label: 'week', icon: IconCalendarWeek, permission: 'analyses.read' },
  { to: '/review', section: 'now', label: 'review', icon: IconClipboardCheck, permission: 'reviews.read' },
  { to: '/failures', section: 'reports', label: 'failures', icon: IconListDetails, permission: 'failures.read' },
  { to: '/record', section: 'reports', label: 'record', icon: IconPencilPlus, permission: 'failures.write' },
  { to: '/causes', section: 'analyses', label: 'causes', icon: IconChartBar, permission: 'analyses.read' },
  { to: '/signals', section: 'analyses', label: 'signals', icon: IconBellRinging, permission: 'analyses.read' },
  { to: '/charts', section: 'analyses', label: 'charts', icon: IconChartDots, permission: 'analyses.read' },
  { to: '/escapes', section: 'analyses', label: 'escapes', icon: IconArrowsSplit2, permission: 'analyses.read' },
  { to: '/gates', section: 'analyses', label: 'gates', icon: IconFilter, permission: 'analyses.read' },
  { to: '/maturity', section: 'analyses', label: 'maturity', icon: IconHourglass, permission: 'analyses.read' },
  { to: '/what-if', section: 'analyses', label: 'whatIf', icon: IconCalculator, permission: 'analyses.read' },
  {
    to: '/evidence/record',
    section: 'analyses',
    label: 'suggestion',
    icon: IconTargetArrow,
    permission: 'analyses.read',
  },
  { to: '/force', section: 'analyses', label: 'force', icon: IconGauge, permission: 'force.read' },
  {
    to: '/complaints',
    section: 'followUp',
    label: 'complaints',
    icon: IconMessageReport,
    permission: 'complaints.read',
  },
  {
    to: '/containment',
    section: 'followUp',
    label: 'containment',
    icon: IconBarrierBlock,
    permission: 'containment.read',
  },
  { to: '/actions', section: 'followUp', label: 'actions', icon: IconListCheck, permission: 'actions.read' },
  { to: '/cases', section: 'followUp', label: 'cases', icon: IconSitemap, permission: 'cases.read' },
  { to: '/lessons', section: 'followUp', label: 'lessons', icon: IconBulb, permission: 'cases.read' },
  { to: '/production', section: 'data', label: 'production', icon: IconStack2, permission: 'production.read' },
  { to: '/imports', section: 'data', label: 'imports', icon: IconFileImport, permission: 'imports.read' },
  { to: '/master-data', section: 'data', label: 'masterData', icon: IconBoxMultiple, permission: 'masterData.read' },
  { to: '/people', section: 'data', label: 'people', icon: IconUsers, permission: 'people.read' },
  { to: '/audit', section: 'data', label: 'audit', icon: IconHistory, permission: 'audit.read' },
];

/** The pages that stand beside "More" on a phone. */
export const atHand: readonly PageEntry['label'][] = ['week', 'failures', 'record', 'causes'];
