using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>The fields that steps rest on, in German.</summary>
public static class GermanFields
{
    public static FieldWords Words { get; } = new()
    {
        Tag = "de",
        DecimalComma = true,
        FieldOf = "{field}, {of}",
        Yes = "ja",
        No = "nein",
        Names = new Dictionary<string, string>
        {
            ["name"] = "Bezeichnung", ["text"] = "Wortlaut", ["order"] = "Platz in der Reihenfolge", ["kind"] = "Art", ["label"] = "Schild", ["mark"] = "Kennzeichen", ["from"] = "von", ["to"] = "nach", ["axis"] = "Achse",
            // Sitz und Maße.
            ["x"] = "Lage x", ["y"] = "Lage y", ["z"] = "Höhe z", ["yaw"] = "Drehung", ["tiltX"] = "Neigung um x", ["tiltY"] = "Neigung um y", ["length"] = "Länge", ["width"] = "Breite", ["depth"] = "Tiefe", ["height"] = "Höhe",
            ["diameter"] = "Durchmesser", ["innerDiameter"] = "Innendurchmesser", ["thickness"] = "Dicke", ["wall"] = "Wandstärke", ["shape"] = "Form", ["mass"] = "Masse", ["density"] = "Dichte", ["material"] = "Werkstoff",
            ["centreX"] = "Schwerpunkt x", ["centreY"] = "Schwerpunkt y", ["centreZ"] = "Schwerpunkt z", ["inertia"] = "Trägheit", ["inertiaX"] = "Trägheit um x", ["inertiaY"] = "Trägheit um y", ["inertiaZ"] = "Trägheit um z",
            ["productXY"] = "Deviationsmoment xy", ["productYZ"] = "Deviationsmoment yz", ["productZX"] = "Deviationsmoment zx",
            // Der Roboter.
            ["family"] = "Bauart", ["chains"] = "Ketten", ["numberedCounterClockwise"] = "gegen den Uhrzeigersinn gezählt", ["holding"] = "gehalten durch", ["feedback"] = "Geber", ["azimuth"] = "Winkel um die Basis", ["inclination"] = "Neigung der Schiene",
            ["baseRadius"] = "Radius der Basis", ["baseHeight"] = "Höhe der Basis", ["baseSideOffset"] = "seitlicher Versatz an der Basis", ["sideLean"] = "seitliche Neigung", ["rod"] = "Stangenlänge", ["rodSpacing"] = "Abstand der Stangen",
            ["rodMass"] = "Stangenmasse", ["rodForceLimit"] = "größte Stangenkraft", ["jointPreload"] = "Vorspannung der Gelenke", ["platformRadius"] = "Radius der Plattform", ["platformHeight"] = "Höhe der Plattform", ["platformSideOffset"] = "seitlicher Versatz an der Plattform",
            ["platformMass"] = "Masse der Plattform", ["platformCentreZ"] = "Schwerpunkt z der Plattform", ["carriageMass"] = "Masse des Schlittens", ["counterweight"] = "Gegengewicht", ["coulombFriction"] = "Reibkraft", ["viscousFriction"] = "Reibung je Geschwindigkeit",
            ["travelFrom"] = "Anfang des Hubs", ["travelTo"] = "Ende des Hubs", ["homeOffset"] = "Abstand des Nullpunkts", ["homingDifference"] = "größter Unterschied beim Referenzieren", ["fitted"] = "vorhanden", ["friction"] = "Reibung",
            ["rotaryFrom"] = "kleinster Drehwinkel", ["rotaryTo"] = "größter Drehwinkel",
            // Antriebe und Bewegung.
            ["motors"] = "Motoren", ["motor"] = "Motor", ["axes"] = "Achsen", ["transmission"] = "Getriebe", ["ratio"] = "Übersetzung", ["pulleyRadius"] = "Radius der Riemenscheibe", ["efficiency"] = "Wirkungsgrad", ["largestSpeed"] = "größte Geschwindigkeit",
            ["largestAcceleration"] = "größte Beschleunigung", ["largestJerk"] = "größter Ruck", ["rotorInertia"] = "Trägheit des Läufers", ["curve"] = "Drehmomentkurve", ["curveVoltage"] = "Spannung der Drehmomentkurve", ["speed"] = "Drehzahl", ["torque"] = "Drehmoment",
            ["peakRate"] = "Spitzentakt", ["profile"] = "Bewegungsgesetz", ["along"] = "Bewegungsgesetz längs", ["pathSpeed"] = "Bahngeschwindigkeit", ["pathAcceleration"] = "Bahnbeschleunigung", ["pathJerk"] = "Bahnruck", ["comfort"] = "Reserve",
            ["blend"] = "Verschleifabstand", ["rise"] = "Hubhöhe", ["settle"] = "Beruhigungszeit", ["pick"] = "Aufnahme", ["pickAt"] = "Ort der Aufnahme", ["pickDwell"] = "Verweilzeit der Aufnahme", ["place"] = "Ablage", ["placeAt"] = "Ort der Ablage",
            ["placeDwell"] = "Verweilzeit der Ablage", ["part"] = "Teil", ["parts"] = "Teile", ["waypoints"] = "Wegpunkte", ["lowestVoltage"] = "kleinste Spannung", ["highestVoltage"] = "größte Spannung",
            // Stationen.
            ["stations"] = "Stationen", ["approach"] = "Anfahrhöhe", ["columns"] = "Spalten", ["rows"] = "Reihen", ["columnPitch"] = "Abstand der Spalten", ["rowPitch"] = "Abstand der Reihen", ["window"] = "Fenster",
            // Werkzeug und Luft.
            ["tcpX"] = "Arbeitspunkt x", ["tcpY"] = "Arbeitspunkt y", ["tcpZ"] = "Arbeitspunkt z", ["beside"] = "hängt neben dem vorigen", ["vacuum/level"] = "verlangtes Vakuum", ["supplyPressure"] = "Versorgungsdruck", ["users"] = "Verbraucher", ["hoses"] = "Schläuche",
            // Schaltschrank, Kabel, Signale.
            ["modules"] = "Module", ["address"] = "Adresse", ["dischargeTime"] = "Entladezeit", ["fan"] = "Lüfter", ["fanFlow"] = "Luftstrom des Lüfters", ["motorBranch"] = "Stromkreis der Motorseite", ["drives"] = "treibt", ["sources"] = "Versorgungen",
            ["voltage"] = "Spannung", ["alternating"] = "Wechselspannung", ["fedBy"] = "gespeist aus", ["branches"] = "Stromkreise", ["protection"] = "Absicherung", ["rating"] = "Bemessungsstrom", ["section"] = "Leiterquerschnitt", ["coreArea"] = "Aderquerschnitt",
            ["first"] = "erste Adresse", ["last"] = "letzte Adresse", ["stride"] = "Adressschritt", ["range"] = "zulässige Adressen", ["placing"] = "Vergabe", ["setBy"] = "eingestellt durch", ["addressClasses/switches"] = "Adressschalter", ["shownAtZero"] = "Anzeige bei Adresse 0",
            ["positions"] = "Stellungen des Schalters", ["protocol"] = "Protokoll", ["terminators"] = "Abschlusswiderstände", ["cables"] = "Kabel", ["connector"] = "Stecker", ["contacts"] = "Kontakte", ["gender"] = "Stift oder Buchse", ["coding"] = "Kodierung",
            ["face"] = "Steckfeld", ["signals"] = "Signale", ["signal"] = "Signal", ["channel"] = "Kanal", ["bank"] = "Baugruppe", ["direction"] = "Richtung", ["onAtRest"] = "in Ruhe ein", ["switches"] = "Schalter", ["gap"] = "Schaltabstand", ["at"] = "Schaltpunkt",
            ["reversed"] = "gegenläufig", ["perUnit"] = "Weg je Einheit", ["frameYaw"] = "Drehung des Koordinatensystems", ["zDown"] = "z nach unten",
            // Sicherheit und Auftrag.
            ["devices"] = "Schutzeinrichtungen", ["stopTime"] = "Anhaltezeit", ["functions"] = "Sicherheitsfunktionen", ["channels"] = "Kanäle", ["provenBy"] = "nachgewiesen durch", ["tolerance"] = "Toleranz", ["partsList"] = "Stückliste",
            // Heben und Gestell.
            ["lifts"] = "Hebevorgänge", ["aid"] = "Hebehilfe", ["bolts"] = "erste Schrauben", ["anchored"] = "verankert", ["lowestFrequency"] = "kleinste Eigenfrequenz", ["largestAnchorPull"] = "größter Zug am Dübel",
            // Platten und Verbindungen.
            ["interfaces"] = "Anschraubflächen", ["materials"] = "Werkstoffe", ["plates"] = "Platten", ["plate"] = "Platte", ["standard"] = "Norm", ["thread"] = "Gewinde", ["threadDepth"] = "Gewindetiefe", ["threadMaterial"] = "Werkstoff des Gewindes", ["tapped"] = "Gewindebohrungen",
            ["holes"] = "Bohrungen", ["circle"] = "Lochkreis", ["startAngle"] = "Winkel der ersten Bohrung", ["grip"] = "Klemmlänge", ["bore"] = "Durchgang", ["centring"] = "Zentrierung", ["centringDiameter"] = "Durchmesser der Zentrierung", ["centringDepth"] = "Tiefe der Zentrierung",
            ["pinDiameter"] = "Durchmesser des Passstifts", ["pinCircle"] = "Kreis des Passstifts", ["pinAngle"] = "Winkel des Passstifts", ["faceDiameter"] = "Durchmesser der Fläche", ["faceWidth"] = "Breite der Fläche", ["faceDepth"] = "Tiefe der Fläche",
            ["above"] = "Fläche oben", ["below"] = "Fläche unten", ["outline"] = "Umriss", ["pieces"] = "Anzahl Platten", ["stock"] = "Dicken im Lager", ["clocking"] = "Verdrehung", ["clockingStep"] = "Schritt der Verdrehung", ["firstFitted"] = "zuerst montiert",
            ["joiningThread"] = "Gewinde zwischen den Platten", ["keyRoom"] = "Platz für den Schlüssel", ["lighten"] = "erleichtert", ["plates/wall"] = "kleinste Wand", ["edge"] = "kleinster Rand", ["floor"] = "kleinster Boden",
            ["pattern"] = "Lochbild", ["side"] = "Seite", ["head"] = "Schraubenkopf", ["into"] = "geschraubt in", ["propertyClass"] = "Festigkeitsklasse", ["washerDiameter"] = "Durchmesser der Scheibe", ["washerThickness"] = "Dicke der Scheibe", ["clamped"] = "geklemmte Teile",
            ["engagement"] = "Einschraublänge", ["roughness"] = "Rauheit", ["frictionFrom"] = "kleinste Reibung im Gewinde", ["frictionTo"] = "größte Reibung im Gewinde", ["faceFriction"] = "Reibung der Fläche", ["wrenchScatter"] = "Streuung des Schlüssels",
            ["joints/load"] = "Last aus", ["load"] = "Last", ["loadFactor"] = "Lastfaktor", ["carriesFrom"] = "trägt ab", ["stands"] = "steht", ["forceX"] = "Kraft x", ["forceY"] = "Kraft y", ["forceZ"] = "Kraft z", ["momentX"] = "Moment um x", ["momentY"] = "Moment um y", ["momentZ"] = "Moment um z",
            ["atX"] = "Angriffspunkt x", ["atY"] = "Angriffspunkt y", ["atZ"] = "Angriffspunkt z", ["slotNutForce"] = "größte Kraft des Nutensteins",
            // Parameter der Steuerung und woraus sie folgen.
            ["controller/settings"] = "Parameter", ["quantity"] = "Größe des Plans", ["of"] = "wessen", ["value"] = "Wert", ["zeroAt"] = "Wert bei Anzeige 0", ["inverse"] = "Anzahl je Einheit", ["digits"] = "Nachkommastellen",
            ["step"] = "Schritt", ["rounding"] = "Rundung", ["decimalComma"] = "Dezimalkomma", ["zeroHeight"] = "Höhe des Nullpunkts", ["bitRate"] = "Bitrate", ["messages"] = "Nachrichten", ["period"] = "Periode",
            ["continuousTorque"] = "Dauerdrehmoment", ["torqueConstant"] = "Drehmomentkonstante", ["continuousCurrent"] = "Dauerstrom", ["peakCurrent"] = "Spitzenstrom", ["countsPerTurn"] = "Zählschritte je Umdrehung", ["driveStep"] = "Antriebsschritt",
            ["upperArm"] = "Länge des Oberarms", ["cycles"] = "Zyklen", ["threadPitch"] = "Steigung der Fußspindel",
        }.ToImmutableDictionary(),
        Sections = new Dictionary<string, string>
        {
            ["robot"] = "", ["common"] = "jede Kette", ["drives/common"] = "jeder Antrieb", ["rotary"] = "Drehachse", ["linearAxis"] = "Linearachse", ["mount"] = "Aufhängung", ["controller"] = "Steuerung", ["tool"] = "Werkzeug", ["vacuum"] = "Vakuum",
            ["pneumatics"] = "Druckluft", ["drives"] = "Antriebe", ["supply"] = "Motorversorgung", ["motion"] = "Bewegung", ["settings"] = "Vorgaben der Bewegung", ["frame"] = "Gestell", ["feet"] = "Füße des Gestells", ["limits"] = "Grenzen des Gestells",
            ["cabinet"] = "Schaltschrank", ["network"] = "Bus", ["enclosure"] = "Gehäuse des Schaltschranks", ["fromEnd"] = "Anfang", ["toEnd"] = "Ende", ["io"] = "Ein- und Ausgänge", ["handling"] = "Heben", ["hanging"] = "Aufhängen des Roboters",
            ["guarding"] = "Schutz", ["stopping"] = "Stillsetzen", ["brief"] = "Auftrag", ["size"] = "", ["cabling"] = "Verkabelung",
        }.ToImmutableDictionary(),
        Entries = new Dictionary<string, string>
        {
            ["chains"] = "Kette {name}", ["motors"] = "Motor {name}", ["drives/axes"] = "Antrieb {name}", ["axes"] = "Achse {name}", ["curve"] = "Kurvenpunkt {name}", ["cycles"] = "Zyklus {name}", ["waypoints"] = "Wegpunkt {name}", ["stations"] = "Station {name}",
            ["parts"] = "Teil {name}", ["tool/parts"] = "Werkzeugteil {name}", ["users"] = "Verbraucher {name}", ["hoses"] = "Schlauch {name}", ["modules"] = "Modul {name}", ["addressClasses"] = "Adressklasse {name}", ["sources"] = "Versorgung {name}",
            ["branches"] = "Stromkreis {name}", ["cables"] = "Kabel {name}", ["devices"] = "Schutzeinrichtung {name}", ["cabling/devices"] = "Gerät {name}", ["signals"] = "Signal {name}", ["switches"] = "Schalter {name}", ["banks"] = "Baugruppe {name}",
            ["functions"] = "Sicherheitsfunktion {name}", ["channels"] = "Kanal {name}", ["requirements"] = "Anforderung {name}", ["lifts"] = "Hebevorgang {name}", ["interfaces"] = "Anschraubfläche {name}", ["materials"] = "Werkstoff {name}",
            ["plates"] = "Platte {name}", ["joints"] = "Verbindung {name}", ["clamped"] = "geklemmtes Teil {name}", ["stock"] = "Dicke {name}", ["settings"] = "Parameter {name}", ["messages"] = "Nachricht {name}",
        }.ToImmutableDictionary(),
        Values = new Dictionary<string, string>
        {
            ["family=rail delta"] = "Schienendelta", ["family=crank delta"] = "Kurbeldelta",
            ["holding=nothing"] = "nichts", ["holding=brake"] = "Bremse", ["holding=counterweight"] = "Gegengewicht", ["holding=friction"] = "Reibung", ["holding=prop"] = "Stütze",
            ["feedback=none"] = "keiner", ["feedback=motor side"] = "am Motor", ["feedback=carriage side"] = "am Schlitten",
            ["provenBy=calculation"] = "Rechnung", ["provenBy=measurement"] = "Messung", ["provenBy=run"] = "Lauf", ["provenBy=inspection"] = "Besichtigung", ["provenBy=document"] = "Unterlage",
            ["kind=fixed nest"] = "festes Nest", ["kind=tray grid"] = "Träger mit Nestern", ["kind=belt"] = "Band", ["kind=servo"] = "Servomotor", ["kind=stepper"] = "Schrittmotor",
            ["transmission=belt"] = "Riemen", ["transmission=screw"] = "Spindel", ["transmission=gear"] = "Zahnradgetriebe",
            ["profile=trapezoidal"] = "Trapez", ["profile=seven-phase"] = "sieben Phasen", ["along=path"] = "der Bahn", ["along=axes"] = "der Achsen",
            ["pickAt=middle"] = "Mitte", ["pickAt=first"] = "erster", ["pickAt=last"] = "letzter", ["pickAt=farthest"] = "fernster", ["placeAt=middle"] = "Mitte", ["placeAt=first"] = "erster", ["placeAt=last"] = "letzter", ["placeAt=farthest"] = "fernster",
            ["shape=gate"] = "Tor", ["shape=straight"] = "gerade", ["shape=arc"] = "Bogen", ["shape=waypoints"] = "Wegpunkte", ["shape=box"] = "Quader", ["shape=cylinder"] = "Zylinder", ["shape=tube"] = "Rohr", ["shape=ring"] = "Ring mit Loch", ["shape=sphere"] = "Kugel",
            ["shape=given"] = "angegeben", ["shape=mesh"] = "Netz", ["shape=circle"] = "Kreis", ["shape=rectangle"] = "Rechteck", ["shape=list"] = "Liste", ["axis=upright"] = "aufrecht", ["axis=along x"] = "längs x", ["axis=along y"] = "längs y",
            ["kind=plate"] = "Platte", ["kind=rotary axis"] = "Drehachse", ["kind=gripper"] = "Greifer", ["kind=cup"] = "Sauger", ["kind=finger"] = "Finger am Greifer", ["kind=other"] = "anderes", ["grip=friction"] = "Reibschluss", ["grip=form"] = "Formschluss",
            ["kind=cylinder"] = "Zylinder", ["kind=ejector"] = "Ejektor", ["kind=blow-off"] = "Abblasen", ["kind=mechanical"] = "mechanisch", ["kind=inductive"] = "induktiv", ["kind=optical"] = "optisch",
            ["kind=motor"] = "Motorkabel", ["kind=feedback"] = "Geberkabel", ["kind=brake"] = "Bremsenkabel", ["kind=limit switch"] = "Endschalter", ["kind=tool"] = "Werkzeug", ["kind=inputs and outputs"] = "Ein- und Ausgänge", ["kind=network"] = "Bus",
            ["kind=supply"] = "Versorgung", ["kind=earth"] = "Schutzleiter", ["gender=pins"] = "Stifte", ["gender=sockets"] = "Buchsen", ["gender=terminals"] = "Klemmen", ["direction=input"] = "Eingang", ["direction=output"] = "Ausgang",
            ["placing=by place"] = "nach dem Platz", ["placing=rising"] = "steigend", ["placing=any"] = "beliebig", ["setBy=rotary switches"] = "Drehschalter", ["setBy=DIP switches"] = "DIP-Schalter", ["setBy=software"] = "Programm",
            ["protection=fuse gG"] = "Sicherung gG", ["protection=breaker B"] = "Leitungsschutzschalter B", ["protection=breaker C"] = "Leitungsschutzschalter C", ["protection=breaker D"] = "Leitungsschutzschalter D", ["protection=electronic"] = "elektronisch",
            ["protocol=other"] = "ein anderes", ["centring=none"] = "keine", ["centring=boss"] = "Zentrieransatz", ["centring=bore"] = "Zentrierbohrung", ["firstFitted=above"] = "oben", ["firstFitted=below"] = "unten", ["outline=round"] = "rund", ["outline=fitted"] = "angepasst",
            ["head=cap screw"] = "Zylinderkopf", ["head=hexagon"] = "Sechskant", ["head=countersunk"] = "Senkkopf", ["side=above"] = "oben", ["side=below"] = "unten", ["side=between"] = "dazwischen", ["into=tapped hole"] = "Gewindebohrung", ["into=nut"] = "Mutter",
            ["into=slot nut"] = "Nutenstein", ["load=mount"] = "der Aufhängung", ["load=tool"] = "dem Werkzeug", ["load=stated"] = "Angabe", ["roughness=fine"] = "fein", ["roughness=medium"] = "mittel", ["roughness=coarse"] = "grob",
            ["quantity=rod"] = "Stangenlänge", ["quantity=upper arm"] = "Länge des Oberarms", ["quantity=base radius"] = "Radius der Basis", ["quantity=base height"] = "Höhe der Basis",
            ["quantity=platform radius"] = "Radius der Plattform", ["quantity=platform height"] = "Höhe der Plattform", ["quantity=azimuth"] = "Winkel um die Basis", ["quantity=inclination"] = "Neigung der Schiene",
            ["quantity=home offset"] = "Abstand des Nullpunkts", ["quantity=smallest reading"] = "kleinste Anzeige", ["quantity=largest reading"] = "größte Anzeige", ["quantity=reading at home"] = "Anzeige am Nullpunkt",
            ["quantity=direction"] = "Zählrichtung", ["quantity=axis speed"] = "Achsgeschwindigkeit", ["quantity=axis acceleration"] = "Achsbeschleunigung", ["quantity=axis jerk"] = "Achsruck",
            ["quantity=drive step"] = "Antriebsschritt", ["quantity=travel per turn"] = "Weg je Umdrehung", ["quantity=ratio"] = "Übersetzung", ["quantity=counts per turn"] = "Zählschritte je Umdrehung",
            ["quantity=continuous current"] = "Dauerstrom", ["quantity=peak current"] = "Spitzenstrom", ["quantity=path speed"] = "Bahngeschwindigkeit", ["quantity=path acceleration"] = "Bahnbeschleunigung",
            ["quantity=path jerk"] = "Bahnruck", ["quantity=blend"] = "Verschleifabstand", ["quantity=frame turn"] = "Drehung des Koordinatensystems", ["quantity=mount height"] = "Höhe der Aufhängung",
            ["quantity=TCP x"] = "Arbeitspunkt x", ["quantity=TCP y"] = "Arbeitspunkt y", ["quantity=TCP z"] = "Arbeitspunkt z", ["quantity=address"] = "Adresse", ["quantity=bit rate"] = "Bitrate", ["quantity=period"] = "Periode",
            ["rounding=nearest"] = "zum nächsten", ["rounding=down"] = "nach unten", ["rounding=up"] = "nach oben",
        }.ToImmutableDictionary(),
    };
}
