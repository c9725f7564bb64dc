import { Button, FileButton } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import { type Complaint, readComplaintPhoto, removeComplaintPhoto } from '#contracts/complaints.ts';
import { addressOf, call } from '#web/ui/http.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import classes from './complaints.module.css';
import { sendPhoto, useWrite } from './queries.ts';

export const PhotosSection = ({ complaint, mayWrite }: { complaint: Complaint; mayWrite: boolean }) => {
  const { t } = useTranslation('complaints');
  const add = useWrite(sendPhoto);
  const remove = useWrite((id: string) => call(removeComplaintPhoto, { params: { id } }));
  const error = add.error ?? remove.error;
  const address = (id: string, size: string) => addressOf(readComplaintPhoto, { params: { id }, query: { size } });
  return (
    <section className={classes.section} aria-label={t('photos')}>
      <h2>{t('photos')}</h2>
      <div className={classes.photos}>
        {complaint.photos.map((photo, place) => (
          <figure key={photo.id} style={{ margin: 0 }}>
            <a href={address(photo.id, 'full')} target="_blank" rel="noreferrer">
              <img src={address(photo.id, 'small')} alt={photo.caption ?? t('photo', { place: place + 1 })} />
            </a>
            {mayWrite && (
              <Button variant="subtle" size="compact-md" className="no-print" onClick={() => remove.mutate(photo.id)}>
                {t('removePhoto')}
              </Button>
            )}
          </figure>
        ))}
      </div>
      {complaint.photos.length === 0 && <p>{t('noPhotos')}</p>}
      {mayWrite && (
        <FileButton
          accept="image/jpeg,image/png,image/webp"
          onChange={(file) => file && add.mutate({ id: complaint.id, file })}
        >
          {(props) => (
            <Button variant="default" className="no-print" loading={add.isPending} {...props}>
              {t('addPhoto')}
            </Button>
          )}
        </FileButton>
      )}
      {error && <ProblemNote error={error} />}
    </section>
  );
};
