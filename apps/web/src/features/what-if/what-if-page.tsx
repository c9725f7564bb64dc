import { Button, Group, Text, Title } from '@mantine/core';
import { IconPrinter } from '@tabler/icons-react';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { retireWhatIf, type WhatIf } from '#contracts/what-if.ts';
import { ConfirmButton } from '#web/ui/confirm-button.tsx';
import { call } from '#web/ui/http.ts';
import { useFormat } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { useMay } from '#web/ui/person.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { InputsTable } from './inputs-table.tsx';
import { useForgetWhatIfs, whatIfQuery } from './queries.ts';
import { ResultView } from './result-view.tsx';
import { editWhatIfRoute, filterOf, whatIfRoute } from './routes.ts';

export const WhatIfPage = () => {
  const { id } = whatIfRoute.useParams();
  const result = useQuery(whatIfQuery(id));
  return (
    <QueryBoundary query={result} height={40}>
      {(whatIf) => <Kept whatIf={whatIf} />}
    </QueryBoundary>
  );
};

/** A scenario as it was computed: it does not move with later reports. */
const Kept = ({ whatIf }: { whatIf: WhatIf }) => {
  const { t } = useTranslation('what-if');
  const format = useFormat();
  const filter = filterOf(whatIf.query);
  return (
    <>
      <PageHead title={whatIf.name} aside={<Buttons whatIf={whatIf} />}>
        {t('kept.lead', {
          plant: whatIf.plantCode,
          at: format.instant(whatIf.computedAt),
          person: whatIf.createdBy,
          count: whatIf.result.reports,
        })}
      </PageHead>
      {whatIf.retiredAt && (
        <Text fw={600} mb="md">
          {t('kept.retired', { at: format.instant(whatIf.retiredAt) })}
        </Text>
      )}
      {whatIf.note && (
        <Text mb="lg" style={{ whiteSpace: 'pre-line' }}>
          {whatIf.note}
        </Text>
      )}
      <ResultView input={whatIf.input} result={whatIf.result} filter={filter} />
      <Title order={2} mt="xl" mb="sm">
        {t('inputs')}
      </Title>
      <InputsTable input={whatIf.input} currency={whatIf.currency} />
    </>
  );
};

const Buttons = ({ whatIf }: { whatIf: WhatIf }) => {
  const { t } = useTranslation('what-if');
  const mayWrite = useMay('whatIf.write', whatIf.plantId);
  const queries = useQueryClient();
  const forget = useForgetWhatIfs();
  const retired = whatIf.retiredAt !== null;
  const retire = useMutation({
    mutationFn: () =>
      call(retireWhatIf, { params: { id: whatIf.id }, version: whatIf.version, body: { retired: !retired } }),
    onSuccess: async (changed) => {
      queries.setQueryData(whatIfQuery(whatIf.id).queryKey, changed);
      await forget();
    },
  });
  return (
    <Group className="no-print">
      <Button variant="default" leftSection={<IconPrinter size={18} aria-hidden />} onClick={() => window.print()}>
        {t('kept.print')}
      </Button>
      {mayWrite && (
        <>
          <Button
            variant="default"
            renderRoot={(props) => (
              <Link {...props} to={editWhatIfRoute.to} params={{ id: whatIf.id }} search={filterOf(whatIf.query)} />
            )}
          >
            {t('kept.change')}
          </Button>
          <ConfirmButton
            question={t(retired ? 'kept.restoreQuestion' : 'kept.retireQuestion')}
            confirm={t(retired ? 'kept.restore' : 'kept.retire')}
            onConfirm={() => retire.mutateAsync()}
            pending={retire.isPending}
            error={retire.error}
          >
            {t(retired ? 'kept.restore' : 'kept.retire')}
          </ConfirmButton>
        </>
      )}
    </Group>
  );
};
