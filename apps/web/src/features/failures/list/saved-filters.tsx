import { ActionIcon, Button, Group, Popover, Stack, Text, TextInput } from '@mantine/core';
import { IconBookmark, IconTrash } from '@tabler/icons-react';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { deleteSavedFilter, saveFilter } from '#contracts/failures.ts';
import { useFilter } from '#web/ui/filter/use-filter.ts';
import { call, queryString } from '#web/ui/http.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { parseSearch } from '#web/ui/search.ts';
import { savedFiltersKey, savedFiltersQuery } from '../queries.ts';

const page = 'failures';

/** The person's own filters under their names. */
export const SavedFilters = () => {
  const { t } = useTranslation('failures');
  const [filter] = useFilter();
  const [open, setOpen] = useState(false);
  const [name, setName] = useState('');
  const navigate = useNavigate();
  const queries = useQueryClient();
  const saved = useQuery(savedFiltersQuery);
  const own = (saved.data ?? []).filter((it) => it.page === page);
  const refresh = () => queries.invalidateQueries({ queryKey: savedFiltersKey });
  const save = useMutation({
    mutationFn: () => call(saveFilter, { body: { page, name: name.trim(), query: queryString(filter) } }),
    onSuccess: async () => {
      setName('');
      await refresh();
    },
  });
  const remove = useMutation({
    mutationFn: (id: string) => call(deleteSavedFilter, { params: { id } }),
    onSuccess: refresh,
  });
  const show = (query: string) => {
    setOpen(false);
    void navigate({ to: '/failures', search: parseSearch(query) as never });
  };

  return (
    <Popover opened={open} onChange={setOpen} position="bottom-start" trapFocus withArrow shadow="md">
      <Popover.Target>
        <Button
          variant="default"
          className="no-print"
          leftSection={<IconBookmark size={16} aria-hidden />}
          onClick={() => setOpen(!open)}
        >
          {t('saved.title')}
        </Button>
      </Popover.Target>
      <Popover.Dropdown>
        <Stack gap="sm" w="18rem">
          {own.length === 0 && <Text size="sm">{t('saved.none')}</Text>}
          {own.map(({ id, name, query }) => (
            <Group key={id} wrap="nowrap" gap="xs">
              <Button variant="subtle" justify="flex-start" flex={1} miw={0} onClick={() => show(query)}>
                {name}
              </Button>
              <ActionIcon
                variant="subtle"
                size="lg"
                aria-label={t('saved.remove', { name })}
                onClick={() => remove.mutate(id)}
              >
                <IconTrash size={18} aria-hidden />
              </ActionIcon>
            </Group>
          ))}
          <form
            onSubmit={(event) => {
              event.preventDefault();
              save.mutate();
            }}
          >
            <Group align="flex-end" wrap="nowrap" gap="xs">
              <TextInput
                label={t('saved.name')}
                required
                maxLength={60}
                value={name}
                onChange={(event) => setName(event.currentTarget.value)}
                data-autofocus
                flex={1}
              />
              <Button type="submit" loading={save.isPending} disabled={name.trim() === ''}>
                {t('saved.save')}
              </Button>
            </Group>
          </form>
          {(save.error ?? remove.error) && <ProblemNote error={save.error ?? remove.error} />}
        </Stack>
      </Popover.Dropdown>
    </Popover>
  );
};
