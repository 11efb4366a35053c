import type { Words } from '../en.ts';

export const tour: Words['tour'] = {
  offer: 'Sich in fünf Schritten herumführen lassen',
  offerSecond: 'durch dasselbe Beispiel; Esc beendet es jederzeit',
  start: 'Die Führung beginnen',
  label: 'Die Führung',
  step: (at, of) => `${at} von ${of}`,
  next: 'Weiter',
  done: 'Fertig',
  leave: 'Die Führung verlassen',
  steps: [
    {
      head: 'Stück: was auf dem Rahmen ist',
      text: 'Rahmen, Kette und Garne. Maße stehen auf den Linien der Zeichnung und werden dort getippt; der Satz sagt, was passt und was nicht.',
    },
    {
      head: 'Karton: wonach gewebt wird',
      text: 'Formen entstehen auf der Kette selbst und stufen sich beim Zeichnen zu ganzen Wenden. Nichts geht verloren: Strg Z nimmt alles zurück.',
    },
    {
      head: 'Arbeitsfolge: was als Nächstes kommt',
      text: 'Flächen in der Reihenfolge, in der sie gewebt werden, von unten nach oben. Am Webplatz zählt eine Taste, oder ein Antippen, eine Wende.',
    },
    {
      head: 'Messung: was das Gewebe tut',
      text: 'Ein Foto wird am Rahmen selbst gemessen. Blau ist der Plan, Orange das Gewebe; jede Zahl sagt, wie sicher sie ist.',
    },
    {
      head: 'Verlauf: was sich geändert hat',
      text: 'Alle aufgehobenen Messungen nebeneinander. F1 oder das Fragezeichen zeigt überall Wörter und Tasten.',
    },
  ],
};
