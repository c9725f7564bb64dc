/** The thumb index: the pages a person may open, in the order of the work. */
import {
  IconArrowsSplit2,
  IconBoxMultiple,
  IconCalendarWeek,
  IconChartBar,
  IconFileImport,
  IconHistory,
  IconListDetails,
  IconPencilPlus,
  IconStack2,
  IconTargetArrow,
  IconUsers,
} from '@tabler/icons-react';
import type { LinkProps } from '@tanstack/react-router';
import type { Permission } from '#contracts/permissions.ts';
import type { messages } from './messages.en.ts';

export interface PageEntry {
  readonly to: LinkProps['to'];
  readonly label: keyof typeof messages.pages;
  readonly icon: typeof IconCalendarWeek;
  readonly permission: Permission;
}

export const pages: readonly PageEntry[] = [
  { to: '/', label: 'week', icon: IconCalendarWeek, permission: 'analyses.read' },
  { to: '/failures', label: 'failures', icon: IconListDetails, permission: 'failures.read' },
  { to: '/record', label: 'record', icon: IconPencilPlus, permission: 'failures.write' },
  { to: '/causes', label: 'causes', icon: IconChartBar, permission: 'analyses.read' },
  { to: '/escapes', label: 'escapes', icon: IconArrowsSplit2, permission: 'analyses.read' },
  { to: '/evidence/record', label: 'suggestion', icon: IconTargetArrow, permission: 'analyses.read' },
  { to: '/production', label: 'production', icon: IconStack2, permission: 'production.read' },
  { to: '/imports', label: 'imports', icon: IconFileImport, permission: 'imports.read' },
  { to: '/master-data', label: 'masterData', icon: IconBoxMultiple, permission: 'masterData.read' },
  { to: '/people', label: 'people', icon: IconUsers, permission: 'people.read' },
  { to: '/audit', label: 'audit', icon: IconHistory, permission: 'audit.read' },
];
