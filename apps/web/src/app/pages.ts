/** The thumb index: the pages a person may open, in the order of the work. */
import { IconArrowsSplit2, IconCalendarWeek, IconChartBar } from '@tabler/icons-react';
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
  { to: '/causes', label: 'causes', icon: IconChartBar, permission: 'analyses.read' },
  { to: '/escapes', label: 'escapes', icon: IconArrowsSplit2, permission: 'analyses.read' },
];
