import { Anchor } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';

export const ReportLink = ({ id, children }: { id: string; children: ReactNode }) => (
  <Anchor component={Link} to="/failures/$id" params={{ id } as never} inherit fw={600}>
    {children}
  </Anchor>
);
