import type { Told } from '../toldTable.ts';

/** What the core and the hosts say in English, in German: sentence by sentence, without the full stop. */
export const told: Told = [
  // Hinweise
  ['Left edge drawing in since {height} up', 'Die linke Kante zieht seit {height} Höhe ein'],
  ['Right edge drawing in since {height} up', 'Die rechte Kante zieht seit {height} Höhe ein'],
  ['Left edge drew in at {height} up and came back', 'Die linke Kante zog auf {height} Höhe ein und kam zurück'],
  ['Right edge drew in at {height} up and came back', 'Die rechte Kante zog auf {height} Höhe ein und kam zurück'],
  ['Left edge spreading since {height} up', 'Die linke Kante weicht seit {height} Höhe aus'],
  ['Right edge spreading since {height} up', 'Die rechte Kante weicht seit {height} Höhe aus'],
  ['{figure} mm in', '{figure} mm nach innen'],
  ['{figure} mm out', '{figure} mm nach außen'],
  ['{figure} mm up', '{figure} mm höher'],
  ['{figure} mm down', '{figure} mm tiefer'],
  ['{figure} mm narrower', '{figure} mm schmaler'],
  ['{figure} mm wider', '{figure} mm breiter'],
  ['{figure} mm in ± {spread}', '{figure} mm innen ± {spread}'],
  ['{figure} mm out ± {spread}', '{figure} mm außen ± {spread}'],
  ['{figure} mm up ± {spread}', '{figure} mm höher ± {spread}'],
  ['{figure} mm down ± {spread}', '{figure} mm tiefer ± {spread}'],
  ['{figure} mm narrower ± {spread}', '{figure} mm schmaler ± {spread}'],
  ['{figure} mm wider ± {spread}', '{figure} mm breiter ± {spread}'],
  ['{length} inch narrow ± {spread}', '{length} Zoll zu schmal ± {spread}'],
  ['{length} inch wide ± {spread}', '{length} Zoll zu breit ± {spread}'],
  ['{length} inch up ± {spread}', '{length} Zoll höher ± {spread}'],
  ['{length} inch down ± {spread}', '{length} Zoll tiefer ± {spread}'],
  ['{length} inch narrower ± {spread}', '{length} Zoll schmaler ± {spread}'],
  ['{length} inch wider ± {spread}', '{length} Zoll breiter ± {spread}'],
  ['less than {part}', 'weniger als {part}'],
  ['give or take {spread}', 'auf {spread} genau'],
  ['{length} inch narrow', '{length} Zoll zu schmal'],
  ['{length} inch wide', '{length} Zoll zu breit'],
  ['{length} inch up', '{length} Zoll höher'],
  ['{length} inch down', '{length} Zoll tiefer'],
  ['{length} inch narrower', '{length} Zoll schmaler'],
  ['{length} inch wider', '{length} Zoll breiter'],
  ['{length} inch', '{length} Zoll'],
  ['inches', 'Zoll'],
  ['Leave the weft slacker at the left for the next 6 turns', 'Den Schuss links die nächsten 6 Wenden lockerer legen'],
  [
    'Leave the weft slacker at the right for the next 6 turns',
    'Den Schuss rechts die nächsten 6 Wenden lockerer legen',
  ],
  [
    'Nothing to do at the loom now; keep laying the weft as you do',
    'Jetzt ist nichts zu tun; den Schuss weiter so legen wie bisher',
  ],
  [
    'Lay the weft at a steeper slant before beating, so each pass has more length',
    'Den Schuss vor dem Anschlagen steiler legen, damit jeder mehr Länge hat',
  ],
  [
    'Lay the weft flatter before beating: each pass has more length than it needs',
    'Den Schuss vor dem Anschlagen flacher legen: jeder hat mehr Länge, als er braucht',
  ],
  [
    'Draw the weft a little closer round the left end for the next 6 turns',
    'Den Schuss die nächsten 6 Wenden etwas enger um den linken Kettfaden ziehen',
  ],
  [
    'Draw the weft a little closer round the right end for the next 6 turns',
    'Den Schuss die nächsten 6 Wenden etwas enger um den rechten Kettfaden ziehen',
  ],
  ['The fell falls {size} to the left', 'Der Warenrand fällt nach links um {size}'],
  ['The fell falls {size} to the right', 'Der Warenrand fällt nach rechts um {size}'],
  [
    'Beat the left half on its own for two turns, and the right half more lightly',
    'Zwei Wenden lang die linke Hälfte allein anschlagen, die rechte leichter',
  ],
  [
    'Beat the right half on its own for two turns, and the left half more lightly',
    'Zwei Wenden lang die rechte Hälfte allein anschlagen, die linke leichter',
  ],
  ['The left half is {size} higher, less than a turn', 'Die linke Hälfte ist {size} höher, weniger als eine Wende'],
  ['The right half is {size} higher, less than a turn', 'Die rechte Hälfte ist {size} höher, weniger als eine Wende'],
  ['The left half is one turn ahead', 'Die linke Hälfte ist eine Wende voraus'],
  ['The right half is one turn ahead', 'Die rechte Hälfte ist eine Wende voraus'],
  ['The left half is {turns} turns ahead', 'Die linke Hälfte ist {turns} Wenden voraus'],
  ['The right half is {turns} turns ahead', 'Die rechte Hälfte ist {turns} Wenden voraus'],
  ['Beat the left half a little more firmly', 'Die linke Hälfte etwas fester anschlagen'],
  ['Beat the right half a little more firmly', 'Die rechte Hälfte etwas fester anschlagen'],
  ['Weave 1 turn on the left before going on', 'Links 1 Wende weben, bevor es weitergeht'],
  ['Weave 1 turn on the right before going on', 'Rechts 1 Wende weben, bevor es weitergeht'],
  ['Weave {turns} turns on the left before going on', 'Links {turns} Wenden weben, bevor es weitergeht'],
  ['Weave {turns} turns on the right before going on', 'Rechts {turns} Wenden weben, bevor es weitergeht'],
  ['Beating softer: a pass is {pass}, not {plan}', 'Weicher angeschlagen: ein Schuss misst {pass}, nicht {plan}'],
  ['Beating harder: a pass is {pass}, not {plan}', 'Fester angeschlagen: ein Schuss misst {pass}, nicht {plan}'],
  ['Left as it is, the top will sit {size} high', 'Bleibt es so, sitzt das obere Ende {size} zu hoch'],
  ['Left as it is, the top will sit {size} low', 'Bleibt es so, sitzt das obere Ende {size} zu tief'],
  [
    'Re-plan the rest with the measured pass, or change the beat',
    'Den Rest mit dem gemessenen Schuss neu planen, oder anders anschlagen',
  ],
  ['{planned} ends planned, {seen} seen', '{planned} Kettfäden geplant, {seen} gesehen'],
  ['End {end} may be missing or hidden', 'Kettfaden {end} fehlt vielleicht oder ist verdeckt'],
  ['Ends {ends} may be missing or hidden', 'Die Kettfäden {ends} fehlen vielleicht oder sind verdeckt'],
  [
    'Something lies over notches of ends {ends}, so the ends weren’t counted',
    'Über Kerben der Kettfäden {ends} liegt etwas, darum wurden die Kettfäden nicht gezählt',
  ],
  ['Take it away for a full count', 'Zum Zählen wegnehmen'],
  ['Look whether it is there', 'Nachsehen, ob er da ist'],
  [
    'An edge in the cloth lies {size} to the left of its place',
    'Eine Kante im Gewebe liegt {size} links von ihrem Platz',
  ],
  [
    'An edge in the cloth lies {size} to the right of its place',
    'Eine Kante im Gewebe liegt {size} rechts von ihrem Platz',
  ],
  ['Take the next turns there 1 end to the left', 'Die nächsten Wenden dort 1 Kettfaden weiter links'],
  ['Take the next turns there 1 end to the right', 'Die nächsten Wenden dort 1 Kettfaden weiter rechts'],
  ['Take the next turns there {ends} ends to the left', 'Die nächsten Wenden dort {ends} Kettfäden weiter links'],
  ['Take the next turns there {ends} ends to the right', 'Die nächsten Wenden dort {ends} Kettfäden weiter rechts'],
  [
    'Look whether they are there, and that the piece says the right number',
    'Nachsehen, ob sie da sind und ob das Stück die richtige Zahl nennt',
  ],
  ['End {end} bows to the left above the cloth', 'Kettfaden {end} biegt sich über dem Gewebe nach links'],
  ['End {end} bows to the right above the cloth', 'Kettfaden {end} biegt sich über dem Gewebe nach rechts'],
  [
    'Ends {first} to {last} bow above the cloth',
    'Die Kettfäden {first} bis {last} biegen sich über dem Gewebe zur Seite',
  ],
  ['Up to {size} to one side', 'Bis zu {size} zur Seite'],
  [
    'A picture from above doesn’t show how far a string sags: feel it with a finger',
    'Ein Foto von oben zeigt nicht, wie weit ein Faden durchhängt: mit dem Finger nachfühlen',
  ],
  [
    'If nothing pushes it aside, tighten it before weaving on: take it up with a stick at the top bar, or tie it anew',
    'Wenn nichts ihn zur Seite drückt, vor dem Weiterweben spannen: mit einem Stäbchen am oberen Balken aufnehmen oder neu anknoten',
  ],
  [
    'If nothing pushes them aside, tighten them before weaving on: take them up with a stick at the top bar, or tie them anew',
    'Wenn nichts sie zur Seite drückt, vor dem Weiterweben spannen: mit einem Stäbchen am oberen Balken aufnehmen oder neu anknoten',
  ],
  [
    'Ends {first} and {second} cross between the cloth and the top bar',
    'Die Kettfäden {first} und {second} kreuzen sich zwischen Gewebe und oberem Balken',
  ],
  ['End {end} hangs in the notch of end {other}', 'Kettfaden {end} hängt in der Kerbe von Kettfaden {other}'],
  [
    'Unhook both at the top bar and let them change places before weaving on',
    'Beide am oberen Balken aushängen und vor dem Weiterweben die Plätze tauschen lassen',
  ],
  [
    'Unhook it at the top bar and hang it in its own notch before weaving on',
    'Am oberen Balken aushängen und vor dem Weiterweben in die eigene Kerbe hängen',
  ],
  [
    'The warp is spreading round end {end}: {size} too wide over {count} ends',
    'Die Kette weicht um Kettfaden {end} aus: über {count} Kettfäden {size} zu breit',
  ],
  ['Pack less there, or take one turn out', 'Dort weniger dicht schlagen, oder eine Wende herausnehmen'],
  [
    'At this rate the left edge is {low} to {high} mm in at the top',
    'Geht es so weiter, liegt die linke Kante oben {low} bis {high} mm innen',
  ],
  [
    'At this rate the left edge is {low} to {high} inch narrow at the top',
    'Geht es so weiter, ist die linke Kante oben {low} bis {high} Zoll zu schmal',
  ],
  [
    'At this rate the left edge is {low} to {high} mm out at the top',
    'Geht es so weiter, liegt die linke Kante oben {low} bis {high} mm außen',
  ],
  [
    'At this rate the left edge is {low} to {high} inch wide at the top',
    'Geht es so weiter, ist die linke Kante oben {low} bis {high} Zoll zu breit',
  ],
  [
    'At this rate the right edge is {low} to {high} mm in at the top',
    'Geht es so weiter, liegt die rechte Kante oben {low} bis {high} mm innen',
  ],
  [
    'At this rate the right edge is {low} to {high} inch narrow at the top',
    'Geht es so weiter, ist die rechte Kante oben {low} bis {high} Zoll zu schmal',
  ],
  [
    'At this rate the right edge is {low} to {high} mm out at the top',
    'Geht es so weiter, liegt die rechte Kante oben {low} bis {high} mm außen',
  ],
  [
    'At this rate the right edge is {low} to {high} inch wide at the top',
    'Geht es so weiter, ist die rechte Kante oben {low} bis {high} Zoll zu breit',
  ],
  // Warum ein Foto nicht gemessen wird
  ['No loom is seen in the picture', 'Auf dem Bild ist kein Webrahmen zu sehen'],
  [
    'Strings may be there, but no frame of the size in the plan is seen around them',
    'Fäden mögen da sein, aber kein Rahmen in der geplanten Größe um sie herum',
  ],
  [
    'Take the picture again from straight above, the whole frame in view, or click the four inner corners',
    'Noch einmal gerade von vorn aufnehmen, den ganzen Rahmen im Bild, oder die vier inneren Ecken antippen',
  ],
  ['Click the four inner corners of the opening', 'Die vier inneren Ecken der Öffnung antippen'],
  ['The picture is taken {angle}° from straight above', 'Das Bild ist {angle}° schräg aufgenommen'],
  ['Hold the camera level over the middle of the loom', 'Die Kamera gerade vor die Mitte des Rahmens halten'],
  ['Only {seen} of {planned} strings are seen', 'Nur {seen} von {planned} Fäden sind zu sehen'],
  [
    'Take the picture with light from the side, so that the strings stand out, or click the four inner corners',
    'Mit Licht von der Seite aufnehmen, damit die Fäden sich abheben, oder die vier inneren Ecken antippen',
  ],
  [
    'Something lies over the notches of {outer} outer ends, so it can’t be seen whether their strings are there',
    'Über den Kerben von {outer} äußeren Kettfäden liegt etwas; ob ihre Fäden da sind, ist nicht zu sehen',
  ],
  [
    'Take away what lies over the bar, then take the picture again',
    'Wegnehmen, was über dem Balken liegt, dann noch einmal aufnehmen',
  ],
  [
    'If nothing lies there, correct the number of ends in the plan',
    'Liegt dort nichts, die Zahl der Kettfäden im Plan berichtigen',
  ],
  ['The plan has {planned} ends; the picture shows {seen}', 'Geplant sind {planned} Kettfäden; das Bild zeigt {seen}'],
  [
    'Correct the number of ends or the first notch in the plan, then check again',
    'Die Zahl der Kettfäden oder die erste Kerbe im Plan berichtigen, dann neu messen',
  ],
  [
    'Counted in notches, the strings begin {count} farther left than planned',
    'In Kerben gezählt beginnen die Fäden {count} weiter links als geplant',
  ],
  [
    'Counted in notches, the strings begin {count} farther right than planned',
    'In Kerben gezählt beginnen die Fäden {count} weiter rechts als geplant',
  ],
  [
    'Lines like strings run out of the picture: a bar of the loom isn’t in it',
    'Linien wie Fäden laufen aus dem Bild hinaus: Ein Balken des Rahmens fehlt darauf',
  ],
  ['The picture’s edge cuts through what may be strings', 'Der Bildrand schneidet durch das, was Fäden sein mögen'],
  [
    'The strings stand as far to one side of the loom’s middle as the plan has them to the other',
    'Die Fäden stehen so weit auf der einen Seite der Rahmenmitte, wie sie nach Plan auf der anderen stehen',
  ],
  [
    'Say whether this camera shows left for right, then check again. If it doesn’t, correct the first notch in the plan',
    'Angeben, ob diese Kamera links und rechts vertauscht, dann neu messen. Wenn nicht, die erste Kerbe im Plan berichtigen',
  ],
  [
    'The colours in the cloth lie as in a mirror image of the plan',
    'Die Farben im Gewebe liegen wie im Spiegelbild des Plans',
  ],
  [
    'Say whether this camera shows left for right, then check again. If it doesn’t, the cartoon was woven the other way round: turn it in the plan',
    'Angeben, ob diese Kamera links und rechts vertauscht, dann neu messen. Wenn nicht, wurde der Karton seitenverkehrt gewebt: im Plan spiegeln',
  ],
  [
    'The bottom bar is not where an opening of {width} × {height} has it',
    'Der untere Balken liegt nicht, wo ihn eine Öffnung von {width} × {height} hätte',
  ],
  [
    'The top bar is not where an opening of {width} × {height} has it',
    'Der obere Balken liegt nicht, wo ihn eine Öffnung von {width} × {height} hätte',
  ],
  [
    'The left rail is not where an opening of {width} × {height} has it',
    'Die linke Leiste liegt nicht, wo sie eine Öffnung von {width} × {height} hätte',
  ],
  [
    'The right rail is not where an opening of {width} × {height} has it',
    'Die rechte Leiste liegt nicht, wo sie eine Öffnung von {width} × {height} hätte',
  ],
  [
    'The plan has an opening of {width} × {height}; the picture shows about {seenWidth} × {seenHeight}',
    'Geplant ist eine Öffnung von {width} × {height}; das Bild zeigt etwa {seenWidth} × {seenHeight}',
  ],
  [
    'Measure the opening’s width and height again and correct them in the plan; if they are right, take the picture without zoom',
    'Breite und Höhe der Öffnung noch einmal messen und im Plan richtigstellen; stimmen sie, das Bild ohne Zoom aufnehmen',
  ],
  [
    'Opening and strings don’t fit together: with notches {pitch} apart the opening is about {seenWidth} × {seenHeight}, with an opening of {width} × {height} the notches are about {seenPitch} apart',
    'Öffnung und Fäden passen nicht zusammen: Bei {pitch} Kerbenabstand ist die Öffnung etwa {seenWidth} × {seenHeight}, bei einer Öffnung von {width} × {height} sind es von Kerbe zu Kerbe etwa {seenPitch}',
  ],
  [
    'Measure the opening, and the notch pitch over ten notches, correct in the plan what differs, then check again',
    'Die Öffnung und den Abstand über zehn Kerben messen, im Plan richtigstellen, was abweicht, und neu prüfen',
  ],
  // Was markiert wurde und nicht zusammenpasst
  ['The bottom left corner', 'Die Ecke unten links'],
  ['The bottom right corner', 'Die Ecke unten rechts'],
  ['The top right corner', 'Die Ecke oben rechts'],
  ['The top left corner', 'Die Ecke oben links'],
  ['The length of {length}', 'Die Länge von {length}'],
  ['The card', 'Die Karte'],
  ['The check of {date}', 'Die Messung vom {date}'],
  [
    'Measure the opening again and correct it in the plan, or mark corners, a length or a card in the picture',
    'Die Öffnung neu messen und im Plan berichtigen, oder Ecken, eine Länge oder eine Karte im Bild markieren',
  ],
  [
    'Look at that check again: if its figures are out, measure its photograph anew or throw it away',
    'Jene Messung noch einmal ansehen: stimmen ihre Zahlen nicht, ihr Foto neu messen oder sie wegwerfen',
  ],
  ['The strings aren’t seen where the earlier check has them', 'Die Fäden sind nicht, wo die vorige Messung sie hat'],
  [
    'The earlier check doesn’t place this picture well enough',
    'Die vorige Messung sagt nicht genau genug, wo der Rahmen in diesem Bild liegt',
  ],
  [
    'The earlier check’s photograph doesn’t show this loom and this cloth beyond doubt',
    'Das Foto der vorigen Messung zeigt nicht zweifelsfrei diesen Rahmen und dieses Gewebe',
  ],
  ['Take the picture again with the whole frame in view', 'Noch einmal aufnehmen, mit dem ganzen Rahmen im Bild'],
  [
    '{mark} and the rest of the picture disagree by {out}, and which of them is right can’t be told',
    '{mark} und das übrige Bild liegen {out} auseinander, und wer von beiden recht hat, ist nicht zu sagen',
  ],
  [
    'Look whether every mark is where it belongs, measure the opening and the length again, and mark one thing more: another corner, a length or a card',
    'Nachsehen, ob jede Marke sitzt, die Öffnung und die Länge noch einmal messen, und eines mehr markieren: eine weitere Ecke, eine Länge oder eine Karte',
  ],
  [
    '{mark} is {out} out against everything else in the picture and was left out',
    '{mark} weicht um {out} von allem anderen auf dem Bild ab und blieb außer Betracht',
  ],
  [
    'Look whether it was marked where it belongs and its size is right, then measure again',
    'Nachsehen, ob die Marke sitzt und die Größe stimmt, dann neu messen',
  ],
  [
    'One corner alone does not place the loom in the picture',
    'Eine Ecke allein sagt nicht, wo der Rahmen im Bild liegt',
  ],
  [
    'Mark two inner corners of the opening at least, as far apart as can be, or all four',
    'Mindestens zwei innere Ecken der Öffnung markieren, möglichst weit auseinander, oder alle vier',
  ],
  [
    'The corners marked lie too near each other or in one line',
    'Die markierten Ecken liegen zu nah beieinander oder auf einer Linie',
  ],
  [
    'Neither frame nor strings are seen well enough there, and the marks alone don’t say how the camera was held',
    'Weder Rahmen noch Fäden sind dort gut genug zu sehen, und die Marken allein sagen nicht, wie die Kamera gehalten wurde',
  ],
  [
    'Mark the other inner corners too, or take the picture again with the whole frame in view',
    'Auch die anderen inneren Ecken markieren, oder noch einmal aufnehmen, mit dem ganzen Rahmen im Bild',
  ],
  ['Four points are needed; there are {count}', 'Vier Punkte braucht es; da sind {count}'],
  [
    "Click the loom's bottom left, bottom right, top right and top left inner corner, in that order",
    'Die inneren Ecken der Reihe nach antippen: unten links, unten rechts, oben rechts, oben links',
  ],
  ['The four points do not make a frame', 'Die vier Punkte ergeben keinen Rahmen'],
  [
    'The four points do not fit an opening of the size in the plan',
    'Die vier Punkte passen nicht zur geplanten Öffnung',
  ],
  [
    "Check the opening's width and height in the plan, and click the inner corners again",
    'Breite und Höhe der Öffnung im Plan prüfen und die inneren Ecken noch einmal antippen',
  ],
  [
    'The picture is {width} × {height} pixels: too small to tell strings apart',
    'Das Bild hat {width} × {height} Pixel: zu klein, um Fäden zu unterscheiden',
  ],
  [
    'Use the original picture, at least 1200 pixels on its long side',
    'Das ursprüngliche Bild nehmen, mit mindestens 1200 Pixeln an der langen Seite',
  ],
  ['The picture is too dark to see the strings', 'Das Bild ist zu dunkel, um die Fäden zu sehen'],
  ['Take it again by a window or under a lamp', 'Am Fenster oder unter einer Lampe noch einmal aufnehmen'],
  ['The picture is so bright that nothing shows in it', 'Das Bild ist so hell, dass nichts darauf zu sehen ist'],
  [
    'Take it again with less light, or tap the loom so that the camera adjusts to it',
    'Mit weniger Licht noch einmal aufnehmen, oder den Rahmen antippen, damit die Kamera sich einstellt',
  ],
  ['The picture is out of focus or shaken', 'Das Bild ist unscharf oder verwackelt'],
  [
    'Hold still, let the camera focus on the strings, and take it again',
    'Ruhig halten, auf die Fäden scharf stellen lassen und noch einmal aufnehmen',
  ],
  [
    'Cloth is seen, but not where it should begin above the bottom bar',
    'Gewebe ist zu sehen, aber nicht dort, wo es über dem unteren Balken beginnen soll',
  ],
  [
    'Click the four inner corners, those of the bottom bar where the cloth begins',
    'Die vier inneren Ecken antippen, die des unteren Balkens dort, wo das Gewebe beginnt',
  ],
  ['Strings are seen, but no woven cloth', 'Fäden sind zu sehen, aber kein Gewebe'],
  [
    'If something is woven, take the picture again in focus and with light from the side',
    'Ist etwas gewebt, noch einmal scharf und mit Licht von der Seite aufnehmen',
  ],
  // Warum ein Kettfaden nicht gesehen wurde
  ['no string is seen at its notch', 'an seiner Kerbe ist kein Faden zu sehen'],
  ['something lies over its notch', 'über seiner Kerbe liegt etwas'],
  ['the picture doesn’t hold all of it', 'er ist nicht ganz im Bild'],
  ['the strings were not told apart', 'die Fäden waren nicht zu trennen'],
  [
    'no floats are seen below it, so something may lie over the fell here',
    'darunter sind keine Flottungen zu sehen, also liegt hier wohl etwas über dem Warenrand',
  ],
  ['floats go on above the edge that was found', 'über der gefundenen Kante gehen die Flottungen weiter'],
  ['something lies over the fell here', 'hier liegt etwas über dem Warenrand'],
  [
    'the last float can’t be told from what lies above it',
    'der letzte Schuss hebt sich nicht von dem ab, was darüber liegt',
  ],
  [
    'its neighbours stop far from here, so something may lie over it',
    'seine Nachbarn enden weit weg, vielleicht liegt etwas darüber',
  ],
  [
    'its neighbours are hidden and it stops far from the next ones',
    'seine Nachbarn sind verdeckt, und er endet weit weg von den nächsten',
  ],
  // Fotos, die sich nicht öffnen lassen
  [
    "The file isn't a photograph Plumbweft can read, or it breaks off",
    'Die Datei ist kein lesbares Foto, oder sie bricht ab',
  ],
  ['The file is empty: there is no photograph in it', 'Die Datei ist leer: es ist kein Foto darin'],
  ['The file is {size} MB; up to {most} MB can be read', 'Die Datei hat {size} MB; bis zu {most} MB lassen sich lesen'],
  ['The photograph says it has no size', 'Das Foto gibt keine Größe an'],
  [
    'The photograph says it is {width} × {height} pixels, more than can be measured',
    'Das Foto hat nach eigener Angabe {width} × {height} Pixel, mehr als sich messen lässt',
  ],
  [
    'The photograph is {width} × {height} pixels, more than can be measured',
    'Das Foto hat {width} × {height} Pixel, mehr als sich messen lässt',
  ],
  [
    'The photograph is only {width} × {height} pixels, too few to see the strings',
    'Das Foto hat nur {width} × {height} Pixel, zu wenige, um Fäden zu sehen',
  ],
  [
    "The photograph breaks off or is damaged, so it can't be read whole",
    'Das Foto bricht ab oder ist beschädigt und lässt sich nicht ganz lesen',
  ],
  ['The photograph took longer than {seconds} seconds to open', 'Das Öffnen dauerte länger als {seconds} Sekunden'],
  ['The photograph took longer than {seconds} seconds to measure', 'Das Messen dauerte länger als {seconds} Sekunden'],
  ['Reading the photograph stopped half-way', 'Das Lesen des Fotos brach mittendrin ab'],
  ['The measuring was stopped', 'Das Messen wurde angehalten'],
  ['Choose the photograph again when you want it', 'Das Foto bei Bedarf noch einmal wählen'],
  ['Choose a photograph as JPEG, PNG, WebP, AVIF or HEIC', 'Ein Foto als JPEG, PNG, WebP, AVIF oder HEIC wählen'],
  ['The file is no longer where it was, or can’t be read', 'Die Datei ist nicht mehr dort oder nicht lesbar'],
  ['Look whether it is still there, then choose it again', 'Nachsehen, ob sie noch dort ist, dann noch einmal wählen'],
  ['Save a smaller copy and choose that', 'Eine kleinere Kopie sichern und die wählen'],
  [
    'Save a copy no larger than 8000 pixels on its longer side and choose that',
    'Eine Kopie mit höchstens 8000 Pixeln an der langen Seite sichern und die wählen',
  ],
  ['Copy it from the camera again', 'Noch einmal von der Kamera kopieren'],
  ['Copy it from the camera again, or take it again', 'Noch einmal von der Kamera kopieren, oder neu aufnehmen'],
  [
    'Use the photograph as the camera took it, not a preview of it',
    'Das Foto nehmen, wie die Kamera es aufnahm, keine Vorschau',
  ],
  [
    'Try a smaller photograph; if it happens again, copy the report and send it to us',
    'Ein kleineres Foto versuchen; geschieht es wieder, den Bericht kopieren und uns schicken',
  ],
  // Messungen und Ordner
  ['The measurement is no longer at hand', 'Die Messung ist nicht mehr zur Hand'],
  ['Measure the photograph again, then keep it', 'Das Foto noch einmal messen, dann aufheben'],
  ['That flag is not in the check', 'Diesen Hinweis gibt es in der Messung nicht'],
  ['Open the check again', 'Die Messung noch einmal öffnen'],
  ['That check is no longer in the piece', 'Diese Messung ist nicht mehr im Stück'],
  ['Choose another from the list', 'Eine andere aus der Liste wählen'],
  ['The photograph is no longer in the piece', 'Das Foto ist nicht mehr im Stück'],
  [
    'The photograph was changed outside Plumbweft, or the disk spoilt it',
    'Das Foto wurde außerhalb von Plumbweft geändert, oder die Platte hat es verdorben',
  ],
  [
    'The figures of its checks are still kept. Bring the photograph back from a copy of the piece if you have one',
    'Die Zahlen seiner Messungen sind noch da. Das Foto aus einer Kopie des Stücks zurückholen, wenn es eine gibt',
  ],
  [
    "The photograph isn't tied to millimetres, so it can't be shown front-on",
    'Das Foto ist an keine Millimeter gebunden und lässt sich nicht von vorn zeigen',
  ],
  ['Mark the four corners of the loom, then try again', 'Die vier Ecken des Rahmens markieren, dann noch einmal'],
  ['There is no such folder', 'Diesen Ordner gibt es nicht'],
  ['Give the whole path of a folder on this computer', 'Den ganzen Pfad eines Ordners auf diesem Rechner angeben'],
  ['That photograph is not in the watched folder', 'Dieses Foto liegt nicht im beobachteten Ordner'],
  ['The photograph is no longer in the watched folder', 'Das Foto liegt nicht mehr im beobachteten Ordner'],
  ['Choose the photograph by hand', 'Das Foto von Hand wählen'],
  ['Copy it there again', 'Noch einmal dorthin kopieren'],
  ['A report is made from a check', 'Ein Bericht entsteht aus einer Messung'],
  ['Choose a check in the record first', 'Zuerst im Verlauf eine Messung wählen'],
  // Offen an zwei Orten, und was das Programm nicht kann
  [
    'This piece is open in {where}, so it can be looked at here but not changed',
    'Dieses Stück ist in {where} offen; hier lässt es sich ansehen, nicht ändern',
  ],
  ['another Plumbweft on this computer ({shell})', 'einem anderen Plumbweft auf diesem Rechner ({shell})'],
  ['another Plumbweft', 'einem anderen Plumbweft'],
  ['Plumbweft on {machine}', 'Plumbweft auf {machine}'],
  ['Close it there and open it again', 'Dort schließen und noch einmal öffnen'],
  [
    'This piece was left open on {where}, last heard of {minutes} minutes ago, so it can be looked at but not changed',
    'Dieses Stück blieb auf {where} offen, zuletzt vor {minutes} Minuten gehört; es lässt sich ansehen, nicht ändern',
  ],
  [
    'Another Plumbweft took this piece over, so nothing was written here',
    'Ein anderes Plumbweft hat dieses Stück übernommen, darum wurde hier nichts geschrieben',
  ],
  [
    'The piece was changed by another Plumbweft since it was opened here, so nothing was written',
    'Ein anderes Plumbweft hat das Stück geändert, seit es hier geöffnet wurde, darum wurde nichts geschrieben',
  ],
  [
    'Open the piece again to see what is kept, then make the change once more',
    'Das Stück noch einmal öffnen, um zu sehen, was aufgehoben ist, und die Änderung noch einmal machen',
  ],
  [
    'Open it again to see what is kept, then make the change once more',
    'Noch einmal öffnen, um zu sehen, was aufgehoben ist, und die Änderung noch einmal machen',
  ],
  [
    "This piece's folder can't be written to, so it can be looked at but not changed",
    'In den Ordner dieses Stücks lässt sich nicht schreiben; es lässt sich ansehen, nicht ändern',
  ],
  ['Plumbweft itself is not running any more', 'Plumbweft selbst läuft nicht mehr'],
  [
    'Start it again with "npm start"; what was kept is on the disk',
    'Mit »npm start« wieder starten; was aufgehoben wurde, liegt auf der Platte',
  ],
  ['This page has lost its key', 'Diese Seite hat ihren Schlüssel verloren'],
  [
    'Open Plumbweft by the address that was printed when it started',
    'Plumbweft über die Adresse öffnen, die beim Start genannt wurde',
  ],
  ['That file is larger than can be read', 'Diese Datei ist größer, als sich lesen lässt'],
  ['Choose a smaller one', 'Eine kleinere wählen'],
  ['Too much was asked at once', 'Es wurde zu viel auf einmal gefragt'],
  ['Wait a moment and try again', 'Kurz warten und noch einmal versuchen'],
  ['That piece is no longer in the list', 'Dieses Stück steht nicht mehr in der Liste'],
  ['Open its folder again, or choose another piece', 'Seinen Ordner noch einmal öffnen, oder ein anderes Stück wählen'],
  [
    "Measure the opening's width and height again and correct them in the plan, or take the picture with the whole frame in view",
    'Breite und Höhe der Öffnung noch einmal messen und im Plan richtigstellen, oder den ganzen Rahmen ins Bild nehmen',
  ],
  [
    "The strings stand {seen} apart; the plan's notches are {planned} apart",
    'Die Fäden stehen {seen} auseinander, die Kerben des Plans {planned}',
  ],
  [
    'Measure the notch pitch over ten notches and correct it in the plan, then check again',
    'Den Abstand über zehn Kerben messen, im Plan richtigstellen und neu prüfen',
  ],
];
