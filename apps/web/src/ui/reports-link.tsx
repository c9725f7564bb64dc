import { Anchor } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import type { Filter } from '#contracts/shared/filter.ts';

/** Opens the reports behind a figure: the list with the same filter, and so the same count. */
export const ReportsLink = ({
  filter,
  children,
  label,
}: {
  filter: Partial<Filter>;
  children: ReactNode;
  label?: string;
}) => (
  <Anchor component={Link} to={'/failures' as string} search={filter as never} aria-label={label} inherit>
    {children}
  </Anchor>
);
