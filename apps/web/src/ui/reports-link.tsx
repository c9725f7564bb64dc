import { Anchor } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import type { Filter } from '#contracts/shared/filter.ts';
import { parseSearch } from './search.ts';

interface Props {
  children: ReactNode;
  /** Says more than the visible text, where that is only a number. */
  label?: string;
}

/** A link to an address of our own that the API named, such as `/failures?cause=none`. */
export const AddressLink = ({ address, children, label }: Props & { address: string }) => {
  const [path = '/', search = ''] = address.split('?');
  return (
    <Anchor component={Link} to={path} search={parseSearch(search) as never} aria-label={label} inherit>
      {children}
    </Anchor>
  );
};

/** Opens the reports behind a figure: the list with the same filter, and so the same count. */
export const ReportsLink = ({ filter, children, label }: Props & { filter: Partial<Filter> }) => (
  <Anchor inherit aria-label={label} renderRoot={(props) => <Link {...props} to="/failures" search={filter} />}>
    {children}
  </Anchor>
);
