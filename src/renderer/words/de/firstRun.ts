import type { Words } from '../en.ts';

export const firstRun: Words['firstRun'] = {
  name: 'Erster Start',
  sentence: 'Noch nichts auf dem Rahmen.',
  lead: 'Breite, Höhe und Rahmen angeben. Dann steht da, wie viele Fäden zu spannen sind, in welchen Kerben, und wie viel Garn zu kaufen ist.',
  open: 'Ein Stück öffnen',
  openSecond: 'eine aufgehobene Zip-Datei; oder hierher ziehen',
  openSecondFolder: 'ein aufgehobener Ordner oder eine Zip-Datei; oder hierher ziehen',
  photograph: 'Schon am Weben? Mit einem Foto beginnen',
  photographSecond: 'erst die Maße angeben; danach wird das Foto gemessen',
  sample: '„Harbour lantern“ ansehen',
  sampleSecond: 'ein Beispiel, das nicht verdorben werden kann, mit berechneten Fotos',
  recent: 'Zuvor auf dem Rahmen',
  drawing: 'Ein leerer Rahmen, in dem ein Lot hängt',
  dropHere: 'Loslassen zum Öffnen',
  notAPiece:
    'Diese Datei ist weder ein aufgehobenes Stück noch ein Foto. Ein Stück endet auf .zip, ein Foto auf .jpg, .png oder .heic.',
  photographFirst: 'Das Foto wartet. Rahmen und Maße angeben, dann wird es gemessen.',
  start: 'Ein Stück beginnen',
  called: { loom: 'Kerbrahmen', warp: 'Kettgarn', yarn: (number) => `Garn ${number}` },
  newName: 'Neues Stück',
  opening: 'Wird geöffnet',
  keyOpen: 'öffnen',
  keySample: 'das Beispiel ansehen',
};
