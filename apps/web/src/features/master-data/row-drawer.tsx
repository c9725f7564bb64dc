import { Drawer, Text } from '@mantine/core';
import { useMediaQuery } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import type { KindView } from './kinds.ts';
import { rowQuery } from './queries.ts';
import { RowForm } from './row-form.tsx';

interface Props {
  view: KindView;
  /** Of a row, or `new`. */
  id: string;
  onClose: () => void;
}

export const RowDrawer = ({ view, id, onClose }: Props) => {
  const { t } = useTranslation('master-data');
  const narrow = useMediaQuery('(max-width: 48em)');
  const title = id === 'new' ? t(`kind.${view.name}.new`) : t(`kind.${view.name}.one`);
  return (
    <Drawer
      opened
      onClose={onClose}
      position="right"
      size={narrow ? '100%' : 'lg'}
      title={
        <Text component="span" fw={650} fz="lg">
          {title}
        </Text>
      }
      closeButtonProps={{ 'aria-label': t('close') }}
    >
      {id === 'new' ? <RowForm view={view} onDone={onClose} /> : <Existing view={view} id={id} onDone={onClose} />}
    </Drawer>
  );
};

const Existing = ({ view, id, onDone }: { view: KindView; id: string; onDone: () => void }) => {
  const row = useQuery({ ...rowQuery(view, id), refetchOnReconnect: false });
  return (
    <QueryBoundary query={row} height={20}>
      {(data) => <RowForm view={view} row={data} onDone={onDone} />}
    </QueryBoundary>
  );
};
