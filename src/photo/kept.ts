/**
 * Photos on this device: one for each field, with its marks, in the browser's own database. Nothing of it is part of
 * the project, so no link and no file holds it.
 */
import { type DBSchema, deleteDB, type IDBPDatabase, openDB } from 'idb';
import { type KeptPhoto, readKeptPhoto } from '../input/kept-photo.ts';
import type { Field } from '../state/snapshot.ts';

interface Photos extends DBSchema {
  photos: { key: Field; value: KeptPhoto };
}

const name = 'ringtrue.photos';

let opened: Promise<IDBPDatabase<Photos>> | null = null;

const photos = (): Promise<IDBPDatabase<Photos>> => {
  opened ??= openDB<Photos>(name, 1, {
    upgrade: (database) => void database.createObjectStore('photos'),
    // Another tab takes the last photo away: the next look opens it anew.
    blocking: (_current, _next, event) => {
      opened = null;
      (event.target as IDBDatabase).close();
    },
  });
  return opened;
};

/** An empty database is no trace worth leaving. */
async function withoutTrace(database: IDBPDatabase<Photos>): Promise<void> {
  if ((await database.count('photos')) > 0) return;
  opened = null;
  database.close();
  await deleteDB(name);
}

/** The photo of a field, or null where there is none or the device is closed to us. */
export async function keptPhoto(field: Field): Promise<KeptPhoto | null> {
  try {
    const database = await photos();
    const found = await database.get('photos', field);
    if (found === undefined) await withoutTrace(database);
    return readKeptPhoto(found);
  } catch {
    return null;
  }
}

/** Answers whether the device took it. */
export async function keepPhoto(field: Field, photo: KeptPhoto): Promise<boolean> {
  try {
    await (await photos()).put('photos', photo, field);
    return true;
  } catch {
    return false;
  }
}

/** Forgets the photo of a field; the last one goes with the database. Answers whether it is gone. */
export async function forgetPhoto(field: Field): Promise<boolean> {
  try {
    const database = await photos();
    await database.delete('photos', field);
    await withoutTrace(database);
    return true;
  } catch {
    return false;
  }
}
