import type { Told } from '../toldTable.ts';

/** What the store, exports, imports and the disk have to say, in German, without the full stop. */
export const toldKeeping: Told = [
  // Die Platte
  ['The disk filled up while {doing}', 'Die Platte ist voll geworden ({doing})'],
  ['What was kept before is unchanged', 'Was vorher gesichert war, ist unverändert'],
  ['Free some space and try again', 'Platz schaffen und noch einmal versuchen'],
  ["The folder can't be written to, seen while {doing}", 'In den Ordner lässt sich nicht schreiben ({doing})'],
  [
    'Move the piece to a folder of your own, or make this one writable',
    'Das Stück in einen eigenen Ordner legen, oder diesen beschreibbar machen',
  ],
  ['A file or folder is no longer there, seen while {doing}', 'Eine Datei oder ein Ordner ist nicht mehr da ({doing})'],
  [
    'If the piece was moved or sits on a drive that was taken out, bring it back and open it again',
    'Wurde das Stück verschoben oder sein Laufwerk abgezogen: zurückbringen und noch einmal öffnen',
  ],
  [
    'A file is larger than Plumbweft reads, seen while {doing}',
    'Eine Datei ist größer, als Plumbweft sie liest ({doing})',
  ],
  ['Use a smaller file', 'Eine kleinere Datei nehmen'],
  ['The computer has too many files open, seen while {doing}', 'Auf dem Rechner sind zu viele Dateien offen ({doing})'],
  ['Close some programs and try again', 'Einige Programme schließen und noch einmal versuchen'],
  ["Something Plumbweft didn't expect happened while {doing}", 'Etwas Unerwartetes ist geschehen ({doing})'],
  ["Something Plumbweft didn't expect happened", 'Etwas Unerwartetes ist geschehen'],
  [
    'Try again; if it happens again, copy the report and send it to us',
    'Noch einmal versuchen; geschieht es wieder, den Bericht kopieren und uns schicken',
  ],
  [
    'Try another photograph; if it happens again, copy the report and send it to us',
    'Ein anderes Foto versuchen; geschieht es wieder, den Bericht kopieren und uns schicken',
  ],
  ['The disk answered with {code} while {doing}', 'Die Platte hat mit {code} geantwortet ({doing})'],
  [
    'Try again; if it happens again, copy the piece to another disk',
    'Noch einmal versuchen; geschieht es wieder, das Stück auf eine andere Platte kopieren',
  ],
  // Was gerade geschah
  ['keeping the {record}', 'beim Sichern: {record}'],
  ['reading the {record}', 'beim Lesen: {record}'],
  ['keeping your place', 'beim Sichern der Stelle im Ablauf'],
  ['making the piece', 'beim Anlegen des Stücks'],
  ['opening the piece', 'beim Öffnen des Stücks'],
  ['looking through the piece', 'beim Durchsehen des Stücks'],
  ['bringing the piece in', 'beim Hereinholen des Stücks'],
  ['exporting the piece', 'beim Packen des Stücks'],
  ['reading a photograph', 'beim Lesen eines Fotos'],
  ['saving the file', 'beim Sichern der Datei'],
  ['throwing the check away', 'beim Wegwerfen der Messung'],
  ['watching the folder', 'beim Beobachten des Ordners'],
  ['piece', 'Stück'],
  ['check', 'Messung'],
  ['photograph', 'Foto'],
  ['progress', 'Stelle im Ablauf'],
  ['settings', 'Einstellungen'],
  ['list of pieces', 'Liste der Stücke'],
  // Dateien, die nicht zu lesen sind
  [
    "The {record} file breaks off or isn't a Plumbweft file any more",
    'Eine Datei ({record}) bricht ab oder ist keine von Plumbweft mehr',
  ],
  [
    'Mend it with "plumbweft verify --mend", which brings back the newest version that was kept beside it',
    'Mit „plumbweft verify --mend“ flicken: es holt die neueste daneben aufgehobene Fassung zurück',
  ],
  ["This file isn't a {record} of Plumbweft's", 'Diese Datei ist von Plumbweft nicht so geschrieben ({record})'],
  [
    'Choose the folder that "plumbweft new" or the app made',
    'Den Ordner wählen, den „plumbweft new“ oder das Programm angelegt hat',
  ],
  ['This {record} was kept by a newer Plumbweft', 'Ein neueres Plumbweft hat das gesichert ({record})'],
  [
    "This {record} was kept by an older Plumbweft and can't be brought up to date",
    'Ein älteres Plumbweft hat das gesichert, und es lässt sich nicht auf den neuen Stand bringen ({record})',
  ],
  [
    'It has not been changed: open it with the Plumbweft it was kept with, or report this',
    'Es wurde nicht geändert: mit dem Plumbweft öffnen, das es gesichert hat, oder das melden',
  ],
  ['It has not been changed', 'Es wurde nicht geändert'],
  ['Open it with the newer Plumbweft it was kept with', 'Mit dem neueren Plumbweft öffnen, das es gesichert hat'],
  [
    "The {record} file holds something Plumbweft doesn't know: {what}",
    'Eine Datei ({record}) enthält etwas, das Plumbweft nicht kennt: {what}',
  ],
  [
    'Take that out again, or mend the piece with "plumbweft verify --mend"',
    'Das wieder herausnehmen, oder das Stück mit „plumbweft verify --mend“ flicken',
  ],
  [
    'The {record} file was changed outside Plumbweft, or the disk spoilt it',
    'Eine Datei ({record}) wurde außerhalb von Plumbweft geändert, oder die Platte hat sie verdorben',
  ],
  ['A check file carries the name of another check', 'Eine Messungsdatei trägt den Namen einer anderen Messung'],
  ['Mend the piece with "plumbweft verify --mend"', 'Das Stück mit „plumbweft verify --mend“ flicken'],
  ['A check of that name is kept already', 'Eine Messung dieses Namens ist schon aufgehoben'],
  ['Keep it once more', 'Noch einmal aufheben'],
  // Stücke öffnen und anlegen
  ['There is already something called "{name}" there', 'Dort gibt es schon etwas, das „{name}“ heißt'],
  ['Choose another name', 'Einen anderen Namen wählen'],
  ['This piece can be looked at but not changed', 'Dieses Stück lässt sich ansehen, nicht ändern'],
  [
    'Close it where it is open, then open it again here',
    'Dort schließen, wo es offen ist, dann hier noch einmal öffnen',
  ],
  [
    'If it is closed there, take it over here, or run "plumbweft verify --mend"',
    'Ist es dort geschlossen, hier übernehmen, oder „plumbweft verify --mend“ laufen lassen',
  ],
  ['Another Plumbweft keeps taking this piece', 'Ein anderes Plumbweft nimmt sich dieses Stück immer wieder'],
  ['There is no piece in this folder', 'In diesem Ordner liegt kein Stück'],
  [
    'Choose a folder that holds a piece.json, or make a new piece',
    'Einen Ordner mit einer piece.json wählen, oder ein neues Stück anlegen',
  ],
  ['There is nothing to open at that place', 'An dieser Stelle gibt es nichts zu öffnen'],
  ['Choose a piece from the list', 'Ein Stück aus der Liste wählen'],
  [
    'This piece is not open here just now, so it can be looked at but not changed',
    'Dieses Stück ist hier gerade nicht offen; es lässt sich ansehen, nicht ändern',
  ],
  ['Open it and try again', 'Öffnen und noch einmal versuchen'],
  ["In the browser a folder can't be chosen", 'Im Browser lässt sich kein Ordner wählen'],
  [
    'Put the piece\'s folder into the folder "{name}" of your documents, or bring it in as a zip',
    'Den Ordner des Stücks in den Ordner „{name}“ der eigenen Dokumente legen, oder es als Zip hereinholen',
  ],
  // Packen und hereinholen
  [
    'A photograph was changed outside Plumbweft, or the disk spoilt it, so nothing was exported',
    'Ein Foto wurde außerhalb von Plumbweft geändert, oder die Platte hat es verdorben; es wurde nichts gepackt',
  ],
  [
    'Look through the piece with "plumbweft verify --mend", then export again',
    'Das Stück mit „plumbweft verify --mend“ durchsehen, dann noch einmal packen',
  ],
  [
    'The places in a photograph could not be taken out, so nothing was exported',
    'Die Orte ließen sich aus einem Foto nicht herausnehmen; es wurde nichts gepackt',
  ],
  [
    'Throw that photograph away first, or keep places on purpose: plumbweft export --keep-places DIR FILE.zip',
    'Erst dieses Foto wegwerfen, oder die Orte mit Absicht behalten: plumbweft export --keep-places ORDNER DATEI.zip',
  ],
  [
    'The piece is too large to be handed over by the browser',
    'Das Stück ist zu groß, um vom Browser übergeben zu werden',
  ],
  [
    'Export it with "npm run -s plumbweft -- export DIR FILE.zip"',
    'Mit „npm run -s plumbweft -- export ORDNER DATEI.zip“ packen',
  ],
  ['It holds {what}, so nothing was brought in', 'Es enthält {what}; es wurde nichts hereingeholt'],
  ['a name far too long', 'einen viel zu langen Namen'],
  ['a link to another place', 'einen Verweis an einen anderen Ort'],
  ["something that isn't a plain file", 'etwas, das keine einfache Datei ist'],
  ["something that isn't part of a piece", 'etwas, das nicht zu einem Stück gehört'],
  ['the same file twice', 'dieselbe Datei zweimal'],
  ['Choose a zip or folder that Plumbweft made', 'Ein Zip oder einen Ordner von Plumbweft wählen'],
  ['Make the zip again where the piece is kept', 'Das Zip dort neu packen, wo das Stück liegt'],
  [
    'It unpacks to far more than a piece holds, so nothing was brought in',
    'Ausgepackt wäre es viel größer als ein Stück; es wurde nichts hereingeholt',
  ],
  ['Choose a zip that Plumbweft made', 'Ein Zip von Plumbweft wählen'],
  ['There is no piece in it', 'Es liegt kein Stück darin'],
  ['Choose a zip or folder that holds a piece.json', 'Ein Zip oder einen Ordner mit einer piece.json wählen'],
  [
    'A file in it is damaged, so nothing was brought in',
    'Eine Datei darin ist beschädigt; es wurde nichts hereingeholt',
  ],
  [
    'Copy the zip again, or make it again where the piece is kept',
    'Das Zip noch einmal kopieren, oder dort neu packen, wo das Stück liegt',
  ],
  ['Nothing was brought in', 'Es wurde nichts hereingeholt'],
  [
    'The folder holds more than {count} files, more than any piece does',
    'Der Ordner enthält über {count} Dateien, mehr als jedes Stück',
  ],
  ['Choose the folder of the piece itself', 'Den Ordner des Stücks selbst wählen'],
  ["The file isn't a zip that can be read whole", 'Die Datei ist kein Zip, das sich ganz lesen lässt'],
  [
    'Make the zip again where the piece is kept, or copy it once more',
    'Das Zip dort neu packen, wo das Stück liegt, oder es noch einmal kopieren',
  ],
  ['The zip holds {count} files, more than any piece does', 'Das Zip enthält {count} Dateien, mehr als jedes Stück'],
  ['The zip is locked with a password', 'Das Zip ist mit einem Kennwort verschlossen'],
  ['Make it again without one where the piece is kept', 'Dort ohne Kennwort neu packen, wo das Stück liegt'],
  [
    'The zip holds a name that leads outside the piece, so nothing was brought in',
    'Das Zip enthält einen Namen, der aus dem Stück hinausführt; es wurde nichts hereingeholt',
  ],
  ['No zip came along', 'Es kam kein Zip mit'],
  ['Choose the zip again', 'Das Zip noch einmal wählen'],
  // Fragen der Seite
  ['No photograph came along', 'Es kam kein Foto mit'],
  ['Choose the photograph again', 'Das Foto noch einmal wählen'],
  ['That view is empty or too large to draw', 'Diese Ansicht ist leer oder zu groß zum Zeichnen'],
  ['Zoom out a little', 'Etwas herauszoomen'],
  ['The page asked for something unknown', 'Die Seite hat nach etwas Unbekanntem gefragt'],
  ['The page asked in a way that is not understood', 'Die Seite hat auf eine Weise gefragt, die nicht verstanden wird'],
  ['Load the page again', 'Die Seite noch einmal laden'],
  [
    'Load the page again; if it happens again, copy the report and send it to us',
    'Die Seite noch einmal laden; geschieht es wieder, den Bericht kopieren und uns schicken',
  ],
];
