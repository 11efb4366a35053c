import type { Told } from '../toldTable.ts';

/** Buying, hanging, finishing, and the remarks beside a block, in German. */
export const toldFinishing: Told = [
  [
    'The weight is a guess from its thickness; buy by length',
    'Das Gewicht ist aus der Dicke geschätzt; nach Länge kaufen',
  ],
  [
    'The weight is a guess; buy by length, or type what the label says',
    'Das Gewicht ist geschätzt; nach Länge kaufen oder eintippen, was auf der Banderole steht',
  ],
  ['By its count', 'Nach seiner Nummer'],
  ['A ball’s label is nearer the truth', 'Die Banderole eines Knäuels kommt der Wahrheit näher'],
  ['{length}, {weight}, 1 ball', '{length}, {weight}, 1 Knäuel'],
  ['{length}, {weight}, {count} balls', '{length}, {weight}, {count} Knäuel'],
  ['Dowel', 'Rundstab'],
  ['Cord to hang it by', 'Schnur zum Aufhängen'],
  ['{length} long, {thick} thick', '{length} lang, {thick} dick'],
  ['Sand the ends', 'Die Enden abschleifen'],
  ['{count} knots included', '{count} Knoten mitgerechnet'],
  ['Wool fibre for {name}', 'Wollfaser für {name}'],
  ['A felting needle or two and a pad', 'Dazu ein, zwei Filznadeln und eine Unterlage'],
  ['A dowel {thick} thick stays straight enough', 'Ein Rundstab von {thick} bleibt gerade genug'],
  [
    'No wooden dowel sold is stiff enough at this width',
    'Für diese Breite gibt es keinen Holzstab, der steif genug ist',
  ],
  [
    'Under {load} it bows {first} at first and {later} after months; {allowed} is allowed',
    'Unter {load} biegt er sich erst {first}, nach Monaten {later}; erlaubt sind {allowed}',
  ],
  [
    'Use a metal rod, or hang the dowel from its middle as well',
    'Einen Metallstab nehmen, oder den Stab auch in der Mitte aufhängen',
  ],
  ['No fringe is wished for', 'Fransen sind nicht gewünscht'],
  ['Needle each string back beside its neighbour', 'Jeden Faden neben seinen Nachbarn zurücknähen'],
  ['The fringe hangs {length} below the knots', 'Die Fransen hängen {length} unter den Knoten'],
  ['The fringe can be {length}, not {wished}', 'Die Fransen können {length} lang werden, nicht {wished}'],
  [
    'The strings below the cloth are {strings}, and a knot takes {knot} of them',
    'Unter dem Gewebe sind die Fäden {strings} lang, ein Knoten braucht davon {knot}',
  ],
  [
    'Start the cloth {height} above the bar for the whole of it, or tie longer strings in',
    'Das Gewebe {height} über dem Balken beginnen, dann reicht es, oder längere Fäden einknüpfen',
  ],
  [
    'Weave {count} of footer, then twine one row above them',
    'Den Abschluss weben ({count}), darüber eine Reihe zwirnen',
  ],
  [
    'Twine one row above the last pass, so that nothing slides when the tension goes',
    'Über dem letzten Schuss eine Reihe zwirnen, damit nichts rutscht, wenn die Spannung nachlässt',
  ],
  [
    'With the piece still on the loom, tuck in {count} tails at the back, each along an end for {length}, and trim',
    'Noch im Rahmen {count} Enden auf der Rückseite einziehen, jedes {length} an einem Kettfaden entlang, und abschneiden',
  ],
  [
    'Take turns with other work: long fine work tires hands and eyes',
    'Mit anderer Arbeit abwechseln: lange feine Arbeit ermüdet Hände und Augen',
  ],
  ['Sew {count} from the back; the longest is {length}', 'Von hinten zunähen ({count}); am längsten sind {length}'],
  ['{count} slits', '{count} Schlitze'],
  ['1 slit', '1 Schlitz'],
  [
    'A needle through tight cloth can slip: push away from the other hand, or wear a thimble',
    'In festem Gewebe rutscht die Nadel leicht ab: von der anderen Hand weg stechen oder einen Fingerhut nehmen',
  ],
  [
    'Slip the loops off the top bar onto the dowel, in groups of {fewer} and {more}',
    'Die Schlaufen vom oberen Balken auf den Stab schieben, in Gruppen von {fewer} und {more}',
  ],
  [
    'Slip the loops off the top bar onto the dowel, in groups of {groups}',
    'Die Schlaufen vom oberen Balken auf den Stab schieben, in Gruppen von {groups}',
  ],
  [
    'Ease the tension first: strings under strain can whip, and the dowel can spring',
    'Erst die Spannung lösen: gespannte Fäden können peitschen, und der Stab kann springen',
  ],
  [
    'Cut the strings at the bottom bar a few at a time, knot each group against the twining, and trim the fringe to {length}',
    'Die Fäden am unteren Balken zu wenigen abschneiden, jede Gruppe an der Zwirnreihe verknoten, die Fransen auf {length} kürzen',
  ],
  [
    'Undo the strings at the bottom bar a few at a time and needle each back into the cloth',
    'Die Fäden am unteren Balken zu wenigen lösen und jeden in das Gewebe zurücknähen',
  ],
  [
    'Cut away from the hand that holds the strings, with sharp blades',
    'Von der haltenden Hand weg schneiden, mit scharfer Schere',
  ],
  ['Fasten {count} where the plan puts them', 'Schmuck anbringen, wo der Plan ihn hat: {count}'],
  ['1 ornament', '1 Stück'],
  ['{count} ornaments', '{count} Stück'],
  [
    'Lay it face down on a towel and steam it lightly from the back, without pressing',
    'Mit der Vorderseite auf ein Tuch legen und von hinten leicht dämpfen, ohne zu drücken',
  ],
  ['Try a spare end first', 'Erst an einem Rest versuchen'],
  [
    'Steam scalds, and some fibres shrink or run: follow what the yarn’s label and the iron’s maker say',
    'Dampf verbrüht, und manche Faser läuft ein oder färbt aus: beachten, was Banderole und Hersteller des Bügeleisens sagen',
  ],
  [
    'Tie {length} of cord to the ends of the dowel, and hang it where sun doesn’t fall on it',
    '{length} Schnur an die Enden des Stabs knoten und so aufhängen, dass keine Sonne darauf fällt',
  ],
  ['It weighs about {load} without its dowel', 'Ohne Stab wiegt es etwa {load}'],
  [
    'Use a fixing made for more than that, in a wall that will hold it',
    'Eine Befestigung nehmen, die mehr trägt, in einer Wand, die sie hält',
  ],
  [
    'Over a bed, a seat or a way through use two fixings, and ask someone who knows the wall',
    'Über Bett, Sitz oder Durchgang zwei Befestigungen nehmen und jemanden fragen, der die Wand kennt',
  ],
  [
    'Measure it off the loom, photograph it, and write both in the record',
    'Nach dem Abnehmen messen, fotografieren und beides im Verlauf festhalten',
  ],
  [
    'Stops here so that the hill stays low; it goes on when its neighbours have caught up',
    'Hält hier, damit der Hügel niedrig bleibt; weiter, wenn die Nachbarn nachgekommen sind',
  ],
  ['Stops here to stay level with its other half', 'Hält hier, um mit der anderen Hälfte gleichauf zu bleiben'],
  [
    'Stops here because the weft beside it, which must rise with it, can go no higher yet',
    'Hält hier, weil der Schuss daneben, der mitwachsen muss, noch nicht höher kann',
  ],
  [
    'Stops here because its next pass lies on a neighbour not yet woven',
    'Hält hier, weil der nächste Schuss auf einem Nachbarn liegt, der noch fehlt',
  ],
  ['It goes on as block {block}', 'Weiter geht es als Fläche {block}'],
  [
    'A fresh weft in the same area: the one below would not meet its neighbours',
    'Ein neuer Schussfaden in derselben Fläche: der untere träfe seine Nachbarn nicht',
  ],
  ['It begins with a single pass, from the left', 'Er beginnt mit einem einzelnen Schuss, von links'],
  ['It begins with a single pass, from the right', 'Er beginnt mit einem einzelnen Schuss, von rechts'],
  ...(
    [
      ['At the left', 'Links'],
      ['At the right', 'Rechts'],
      ['At both sides', 'Beidseits'],
    ] as const
  ).flatMap(([where, german]): Told => {
    return [
      [
        `${where}, loop the weft through its neighbour's each time the two meet between their ends`,
        `${german} den Schuss jedes Mal durch den des Nachbarn schlingen, wo sich beide treffen`,
      ],
      [
        `${where}, where the edge stands upright, both wefts turn on one end, a turn each in alternation`,
        `${german}, wo die Kante gerade steht, wenden beide Schüsse um denselben Kettfaden, abwechselnd je eine Wende`,
      ],
      [
        `${where}, where the edge stands upright, both wefts turn on one end, several turns each`,
        `${german}, wo die Kante gerade steht, wenden beide Schüsse um denselben Kettfaden, je mehrere Wenden`,
      ],
    ];
  }),
];
