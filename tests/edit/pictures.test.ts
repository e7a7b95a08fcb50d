import { describe, expect, it } from 'vitest';
import { addPicture, removePicture } from '../../engine/edit/index.ts';
import { brokenBy } from './brokenBy.ts';
import { done, refused, small } from './small.ts';

const picture = { caption: '-TB1', mediaType: 'image/jpeg', data: '/9j/4AAQ' } as const;
const unit = (id: string) => ({ in: 'units', id }) as const;

describe('pictures', () => {
  it('should stand with what they show, and go with the last thing that shows them', () => {
    const one = done(addPicture(small, unit('a'), 'photos', picture));
    const [id = ''] = one.added;
    expect(one.cabinet.photos).toEqual([{ ...picture, id }]);
    expect(one.cabinet.units?.find((record) => record.id === 'a')?.photos).toEqual([id]);
    const two = done(addPicture(one.cabinet, { in: 'cabinet' }, 'cabinetPhotos', picture)).cabinet;
    expect(two.cabinetPhotos).toHaveLength(1);
    expect(two.cabinetPhotos).not.toEqual([id]);
    expect(brokenBy(two)).toEqual([]);

    const without = done(removePicture(two, unit('a'), 'photos', id, false));
    expect(without.cabinet.photos?.map((photo) => photo.id)).toEqual(two.cabinetPhotos);
    expect(without.removed).toEqual([id]);
    expect(done(removePicture(two, unit('a'), 'photos', id, true)).cabinet.photos).toHaveLength(2);
    const shared = done(addPicture(small, { in: 'controller' }, 'photos', picture)).cabinet;
    const both = { ...shared, cabinetPhotos: shared.controller?.photos ?? [] };
    expect(done(removePicture(both, { in: 'cabinet' }, 'cabinetPhotos', both.cabinetPhotos[0] ?? '', false)).cabinet.photos).toHaveLength(
      1,
    );
  });

  it('should be no more than a file and a thing hold', () => {
    const photos = Array.from({ length: 500 }, (_, index) => ({ ...picture, id: `photo-${index}` }));
    expect(refused(addPicture({ ...small, photos }, unit('a'), 'photos', picture))).toBe('edit-too-many');
    const many = { ...small, photos: photos.slice(0, 100), cabinetPhotos: photos.slice(0, 100).map(({ id }) => id) };
    expect(addPicture(many, { in: 'cabinet' }, 'cabinetPhotos', picture).ok).toBe(false);
  });
});
