import { Button, FileButton, Group, Modal } from '@mantine/core';
import { IconCamera } from '@tabler/icons-react';
import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { uuidv7 } from 'uuidv7';
import { type Photo, type Report, readPhoto, removePhoto } from '#contracts/failures.ts';
import { ConfirmButton } from '#web/ui/confirm-button.tsx';
import { addressOf, call } from '#web/ui/http.ts';
import { useFormat } from '#web/ui/language.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { useForgetReports } from '../queries.ts';
import { photoTypes, sendPhoto } from '../send-photo.ts';
import classes from './report.module.css';

const addressOfPhoto = (id: string, size: 'full' | 'small') =>
  addressOf(readPhoto, { params: { id }, query: { size } });

export const PhotosPanel = ({ report, mayWrite }: { report: Report; mayWrite: boolean }) => {
  const { t } = useTranslation('failures');
  const format = useFormat();
  const forget = useForgetReports();
  const [shown, setShown] = useState<Photo>();
  const add = useMutation({ mutationFn: (file: File) => sendPhoto(report.id, file, uuidv7()), onSuccess: forget });
  const remove = useMutation({
    mutationFn: (id: string) => call(removePhoto, { params: { id } }),
    onSuccess: async () => {
      setShown(undefined);
      await forget();
    },
  });
  const nameOf = (photo: Photo) =>
    photo.caption ?? t('photo.name', { number: report.photos.indexOf(photo) + 1, day: format.instant(photo.addedAt) });

  return (
    <section aria-labelledby="photos">
      <h2 id="photos" className={classes.heading}>
        {t('photo.title')}
      </h2>
      {report.photos.length === 0 && <p className={classes.quiet}>{t('photo.none')}</p>}
      <ul className={classes.photos}>
        {report.photos.map((photo) => (
          <li key={photo.id}>
            <button type="button" onClick={() => setShown(photo)}>
              <img src={addressOfPhoto(photo.id, 'small')} alt={nameOf(photo)} loading="lazy" />
            </button>
          </li>
        ))}
      </ul>
      {add.error && <ProblemNote error={add.error} />}
      {mayWrite && (
        <FileButton onChange={(file) => file && add.mutate(file)} accept={photoTypes}>
          {(props) => (
            <Button
              {...props}
              variant="default"
              className="no-print"
              loading={add.isPending}
              leftSection={<IconCamera size={18} aria-hidden />}
            >
              {t('photo.add')}
            </Button>
          )}
        </FileButton>
      )}
      <Modal
        opened={shown !== undefined}
        onClose={() => setShown(undefined)}
        title={shown && nameOf(shown)}
        size="auto"
        centered
        closeButtonProps={{ 'aria-label': t('photo.close') }}
      >
        {shown && (
          <>
            <img src={addressOfPhoto(shown.id, 'full')} alt={nameOf(shown)} className={classes.large} />
            {mayWrite && (
              <Group justify="flex-end" mt="sm">
                <ConfirmButton
                  question={t('photo.removeQuestion')}
                  confirm={t('photo.remove')}
                  onConfirm={() => remove.mutateAsync(shown.id)}
                  pending={remove.isPending}
                  error={remove.error}
                >
                  {t('photo.remove')}
                </ConfirmButton>
              </Group>
            )}
          </>
        )}
      </Modal>
    </section>
  );
};
