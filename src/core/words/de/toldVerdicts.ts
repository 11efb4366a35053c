import type { Told } from '../toldTable.ts';

/** The core's verdicts on sett, pass, centring and loom fit, in German, without the full stop. */
export const toldVerdicts: Told = [
  ['The weft will cover the warp', 'Der Schuss deckt die Kette'],
  ['The piece sits in the middle of the loom', 'Das Stück sitzt in der Mitte des Rahmens'],
  ['It uses notches {first} to {last} of {all}', 'Es nutzt die Kerben {first} bis {last} von {all}'],
  ['notches {first} to {last} of {all}', 'Kerben {first} bis {last} von {all}'],
  [
    'The piece sits {distance} to the left of the middle, half a notch',
    'Das Stück sitzt {distance} links der Mitte, eine halbe Kerbe',
  ],
  [
    'The piece sits {distance} to the right of the middle, half a notch',
    'Das Stück sitzt {distance} rechts der Mitte, eine halbe Kerbe',
  ],
  ['The piece sits {distance} to the left of the middle', 'Das Stück sitzt {distance} links der Mitte'],
  ['The piece sits {distance} to the right of the middle', 'Das Stück sitzt {distance} rechts der Mitte'],
  [
    'One end more or less would centre it; this little is seldom seen',
    'Ein Kettfaden mehr oder weniger brächte es in die Mitte; so wenig sieht man selten',
  ],
  ['Start in notch {notch} to centre it', 'In Kerbe {notch} beginnen, dann sitzt es in der Mitte'],
  ['A point comes to a single end, end {end}', 'Eine Spitze endet auf einem einzigen Kettfaden, Faden {end}'],
  [
    'A centred point comes to a single end, end {end}',
    'Eine Spitze in der Mitte endet auf einem einzigen Kettfaden, Faden {end}',
  ],
  ['{ends} is odd, so there is an end on the line', '{ends} ist ungerade, darum steht ein Kettfaden auf der Linie'],
  ['{ends} is even, so there is an end on the line', '{ends} ist gerade, darum steht ein Kettfaden auf der Linie'],
  [
    'A point is blunt, two ends wide: ends {left} and {right}',
    'Eine Spitze wird stumpf, zwei Kettfäden breit: Faden {left} und {right}',
  ],
  [
    'A centred point is blunt, two ends wide: ends {left} and {right}',
    'Eine Spitze in der Mitte wird stumpf, zwei Kettfäden breit: Faden {left} und {right}',
  ],
  [
    '{ends} is even, so the line falls between two ends',
    '{ends} ist gerade, darum liegt die Linie zwischen zwei Kettfäden',
  ],
  [
    '{ends} is odd, so the line falls between two ends',
    '{ends} ist ungerade, darum liegt die Linie zwischen zwei Kettfäden',
  ],
  ['{fewer} or {more} ends would give a single one', '{fewer} oder {more} Kettfäden ergäben einen einzigen'],
  [
    'Move it half an end to either side for a single one',
    'Um einen halben Kettfaden nach einer Seite rücken, dann ist es ein einziger',
  ],
  [
    'A point here leans on end {end} and its two sides step unequally',
    'Eine Spitze lehnt hier an Faden {end}, und ihre Seiten stufen ungleich',
  ],
  [
    'The line is neither on an end nor midway between two',
    'Die Linie liegt weder auf einem Kettfaden noch mitten zwischen zweien',
  ],
  ['Move it onto an end, or midway between two', 'Auf einen Kettfaden rücken, oder mitten zwischen zwei'],
  ['{ends} ends at {pitch} are {width}', '{ends} Kettfäden im Abstand {pitch} sind {width}'],
  ['The width fits', 'Die Breite passt'],
  [
    'From notch {notch}, {ends} ends run {past} past the last notch',
    'Ab Kerbe {notch} reichen {ends} Kettfäden {past} über die letzte Kerbe hinaus',
  ],
  ['{width} is wider than the loom by {more}', '{width} ist um {more} breiter als der Rahmen'],
  ['The widest that fits is {width}, {ends} ends', 'Am breitesten passen {width}, {ends} Kettfäden'],
  ['Start in notch {notch} or further left', 'In Kerbe {notch} oder weiter links beginnen'],
  ['Use {ends} ends or fewer', 'Höchstens {ends} Kettfäden nehmen'],
  ['Above the cloth {room} of warp stays bare', 'Über dem Gewebe bleiben {room} Kette frei'],
  ['The height fits', 'Die Höhe passt'],
  [
    'The top will be slow to weave: only {room} of warp is left to open a shed in',
    'Oben webt es sich langsam: nur {room} Kette bleiben, um ein Fach zu öffnen',
  ],
  ['A height of {height} leaves room', 'Eine Höhe von {height} lässt Platz'],
  ['{height} is too tall for this loom', '{height} ist zu hoch für diesen Rahmen'],
  ['It runs {past} past the top bar', 'Es reicht {past} über den oberen Balken hinaus'],
  ['The tallest with ease is {height}', 'Mit Luft gehen höchstens {height}'],
  [
    "Nothing says how thick {yarn} is, so its pass height can't be foretold",
    'Nichts sagt, wie dick {yarn} ist, darum lässt sich die Schusshöhe nicht vorhersagen',
  ],
  ['{pass} is planned', '{pass} ist geplant'],
  [
    'Wrap it round a ruler and count the wraps, or measure 20 passes once they are woven',
    'Um ein Lineal wickeln und die Windungen zählen, oder 20 gewebte Schüsse messen',
  ],
  [
    'A pass of {yarn} is likely to be {low} to {high}: half of {thickness}, because neighbouring passes nest',
    'Ein Schuss {yarn} wird wohl {low} bis {high} hoch: halb so viel wie {thickness}, weil Schüsse ineinander liegen',
  ],
  [
    'A pass of {yarn} is likely to be {low} to {high}: {pass} as measured on the cloth',
    'Ein Schuss {yarn} wird wohl {low} bis {high} hoch: {pass}, am Gewebe gemessen',
  ],
  ['A pass of {pass} suits {yarn}', 'Ein Schuss von {pass} passt zu {yarn}'],
  [
    'A pass of {pass} is closer than {yarn} is likely to beat',
    'Ein Schuss von {pass} ist enger, als sich {yarn} wohl anschlagen lässt',
  ],
  ['A pass of {pass} is taller than {yarn} is likely to beat', 'Ein Schuss von {pass} ist höher, als {yarn} wohl wird'],
  ['Weave 20 passes, measure them and use that height', '20 Schüsse weben, messen und diese Höhe nehmen'],
  ['The gap is {gap} and {yarn} {thickness}, a guess', 'Die Lücke misst {gap} und {yarn} {thickness}, geschätzt'],
  [
    'The gap is {gap} and the weft {thickness}, so the strings won’t show and the rows won’t crowd',
    'Die Lücke misst {gap} und der Schuss {thickness}: die Fäden scheinen nicht durch, die Reihen drängen sich nicht',
  ],
  ['The gap is {gap} and {yarn} {thickness}', 'Die Lücke misst {gap} und {yarn} {thickness}'],
  ['Nothing says how thick {yarn} is', 'Nichts sagt, wie dick {yarn} ist'],
  [
    'Neither a diameter, nor wraps, nor a label or count is given',
    'Weder Durchmesser noch Windungen noch Banderole oder Nummer sind angegeben',
  ],
  [
    'Wrap it round a ruler and count the wraps in a centimetre, or type what its label says',
    'Um ein Lineal wickeln und die Wicklungen auf einem Zentimeter zählen, oder eingeben, was die Banderole sagt',
  ],
  [
    'Wrap it round a ruler and count the wraps in an inch, or type what its label says',
    'Um ein Lineal wickeln und die Wicklungen auf einem Zoll zählen, oder eingeben, was die Banderole sagt',
  ],
  [
    '{yarn} is too thick to go down between the ends: the rows will crowd and the strings show',
    '{yarn} ist zu dick, um zwischen die Kettfäden zu gehen: die Reihen drängen sich und die Fäden scheinen durch',
  ],
  ['{yarn} goes down between the ends with a firm beat', '{yarn} geht mit festem Anschlag zwischen die Kettfäden'],
  [
    '{yarn} has room between the ends, so the rows won’t crowd',
    '{yarn} hat zwischen den Kettfäden Platz, die Reihen drängen sich nicht',
  ],
  [
    '{yarn} is thin for these ends: the cloth will be supple',
    '{yarn} ist dünn für diese Kettfäden: das Gewebe wird weich',
  ],
  [
    '{yarn} is too thin for these ends: the cloth will be loose and the ends will wander',
    '{yarn} ist zu dünn für diese Kettfäden: das Gewebe wird locker und die Kettfäden wandern',
  ],
  [
    'Two passes are {passes} and {yarn} is {thickness} thick in the cloth, a guess',
    'Zwei Schüsse sind {passes} hoch, und {yarn} ist im Gewebe {thickness} dick, geschätzt',
  ],
  [
    'Two passes are {passes} and {yarn} is {thickness} thick in the cloth',
    'Zwei Schüsse sind {passes} hoch, und {yarn} ist im Gewebe {thickness} dick',
  ],
  [
    'Beat closer than {pass}, wind more strands together, or take a thicker weft',
    'Enger als {pass} anschlagen, mehr Fäden zusammen wickeln, oder einen dickeren Schuss nehmen',
  ],
  [
    'A weft {thin} to {thick} thick, {fewest} to {most} wraps to the centimetre',
    'Ein Schuss von {thin} bis {thick} Dicke, {fewest} bis {most} Windungen auf den Zentimeter',
  ],
  ['Or wind 1 strand of it together', 'Oder einfach wickeln'],
  ['Or wind {strands} strands of it together', 'Oder {strands}-fach zusammen wickeln'],
  ['Or warp one string to an end', 'Oder mit einem Faden je Kettfaden bespannen'],
  [
    'This yarn suits ends {closest} to {widest} apart',
    'Dieses Garn passt zu Kettfäden im Abstand {closest} bis {widest}',
  ],
  [
    'The strings fill their notches: warp thinner string, or one string to an end',
    'Die Fäden füllen ihre Kerben: dünner bespannen, oder mit einem Faden je Kettfaden',
  ],
  ['{yarn} will cover the warp', '{yarn} deckt die Kette'],
  ['The strings may show a little through {yarn}', 'Die Fäden scheinen vielleicht ein wenig durch {yarn}'],
  ['The strings will show through {yarn}', 'Die Fäden scheinen durch {yarn}'],
  ['The weft will cover the warp', 'Der Schuss deckt die Kette'],
];
