import type { Told } from '../toldTable.ts';

/** Drawings, pictures and lettering brought into the cartoon, and sizes typed, in German. */
export const toldDrawings: Told = [
  [
    'Scripts in the drawing were left out; nothing in it was run',
    'Skripte in der Zeichnung sind weggelassen; nichts daraus wurde ausgeführt',
  ],
  [
    'Words the drawing defines for itself (entities) were left out',
    'Wörter, die die Zeichnung selbst festlegt (Entitäten), sind weggelassen',
  ],
  [
    'Pictures inside the drawing were left out; trace them as a picture instead',
    'Bilder in der Zeichnung sind weggelassen; sie lassen sich als Bild nachzeichnen',
  ],
  ['Pages and media inside the drawing were left out', 'Seiten und Medien in der Zeichnung sind weggelassen'],
  [
    'Lettering in the drawing was left out; turn it into paths, or write it here',
    'Schrift in der Zeichnung ist weggelassen; in Pfade umwandeln, oder hier schreiben',
  ],
  [
    'Parts kept in other files were left out; nothing was fetched',
    'Teile aus anderen Dateien sind weggelassen; nichts wurde geholt',
  ],
  ['Movement in the drawing was left out', 'Bewegung in der Zeichnung ist weggelassen'],
  ['Shaded colours were taken as one colour, their mean', 'Verläufe sind als eine Farbe genommen, ihr Mittel'],
  ['Areas filled with a pattern were left out', 'Mit Mustern gefüllte Flächen sind weggelassen'],
  [
    'Clipping, masks and filters were passed over; areas may be larger than they looked',
    'Beschnitt, Masken und Filter sind übergangen; Flächen können größer sein, als sie aussahen',
  ],
  ['Areas with sizes that make no sense were left out', 'Flächen mit unsinnigen Maßen sind weggelassen'],
  [
    "A page without size was passed over; what's drawn was fitted instead",
    'Eine Seite ohne Maß ist übergangen; stattdessen ist das Gezeichnete eingepasst',
  ],
  [
    'Parts reused inside themselves were followed only eight deep',
    'Teilen, die sich selbst enthalten, wurde nur acht Stufen tief gefolgt',
  ],
  ['Lines too thin to weave were left out', 'Zum Weben zu dünne Linien sind weggelassen'],
  ['Areas too small to weave were left out', 'Zum Weben zu kleine Flächen sind weggelassen'],
  ['A path that breaks off was kept up to where it breaks', 'Ein abbrechender Pfad ist bis zur Bruchstelle übernommen'],
  ['Some style rules were passed over; check the colours', 'Manche Stilregeln sind übergangen; die Farben prüfen'],
  [
    'The drawing holds no filled area that can be woven',
    'Die Zeichnung enthält keine gefüllte Fläche, die sich weben lässt',
  ],
  [
    'Fill the areas with a colour in a drawing program, or trace a picture of it',
    'Die Flächen in einem Zeichenprogramm mit einer Farbe füllen, oder ein Bild davon nachzeichnen',
  ],
  [
    'The drawing has more parts and points than can be woven',
    'Die Zeichnung hat mehr Teile und Punkte, als sich weben lassen',
  ],
  ['The drawing is longer than 8 million characters', 'Die Zeichnung ist länger als 8 Millionen Zeichen'],
  ['The drawing has more than 60 000 parts', 'Die Zeichnung hat mehr als 60 000 Teile'],
  [
    'The drawing has groups inside groups, more than 256 deep',
    'Die Zeichnung hat Gruppen in Gruppen, mehr als 256 tief',
  ],
  ['The drawing is larger than can be woven', 'Die Zeichnung ist größer, als sich weben lässt'],
  ['The drawing is larger than 8 MB', 'Die Zeichnung ist größer als 8 MB'],
  [
    'Save it without pictures inside, or trace it as a picture',
    'Ohne Bilder darin sichern, oder als Bild nachzeichnen',
  ],
  [
    'Simplify it in a drawing program, or trace a picture of it',
    'In einem Zeichenprogramm vereinfachen, oder ein Bild davon nachzeichnen',
  ],
  ['The file is not an SVG drawing that can be read', 'Die Datei ist keine lesbare SVG-Zeichnung'],
  [
    'Open it in a drawing program and save it again as plain SVG',
    'In einem Zeichenprogramm öffnen und noch einmal als einfaches SVG sichern',
  ],
  ['The picture is empty or broken off', 'Das Bild ist leer oder abgebrochen'],
  ['Choose another picture', 'Ein anderes Bild wählen'],
  ['The picture has more detail than a loom can hold', 'Das Bild hat mehr Einzelheiten, als ein Webrahmen fassen kann'],
  [
    'Make it smaller, about 1 000 pixels across, and try again',
    'Auf etwa 1 000 Bildpunkte Breite verkleinern und noch einmal versuchen',
  ],
  ['In these yarns the whole picture is ground', 'In diesen Garnen ist das ganze Bild Grund'],
  [
    'Add a yarn nearer to its colours, or choose a picture with more contrast',
    'Ein Garn dazunehmen, das seinen Farben näher ist, oder ein kontrastreicheres Bild wählen',
  ],
  [
    'Areas smaller than about {side} × {up} mm were given to their neighbours, to keep to 300 areas',
    'Flächen unter etwa {side} × {up} mm gingen an ihre Nachbarn, damit es bei 300 Flächen bleibt',
  ],
  ['Only the first {figure} letters were taken', 'Nur die ersten {figure} Buchstaben sind genommen'],
  ['The typeface has no {letters}; left out', 'Die Schrift hat kein {letters}; weggelassen'],
  ['There are no letters to weave in that', 'Darin sind keine Buchstaben zum Weben'],
  [
    'Type a word in Latin, Greek or Cyrillic letters',
    'Ein Wort in lateinischen, griechischen oder kyrillischen Buchstaben eintippen',
  ],
  [
    "“{text}” can't be read as a length: nothing is there. Write it like 210, 21 cm, 8 1/4 in or 8¼",
    'Als Länge lässt sich das nicht lesen: es steht nichts da. So schreiben: 210, 21 cm, 8 1/4 Zoll oder 8¼',
  ],
  [
    "“{text}” can't be read as a length. Write it like 210, 21 cm, 8 1/4 in or 8¼",
    '„{text}“ lässt sich nicht als Länge lesen. So schreiben: 210, 21 cm, 8 1/4 Zoll oder 8¼',
  ],
];
