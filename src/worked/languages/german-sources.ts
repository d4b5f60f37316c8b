// German: where relations come from, under their sources as the relations state them, and whose values a step shows.

export const GERMAN_SOURCES: Readonly<Record<string, string>> = {
  'mass balance of a vessel of constant volume': 'Massenbilanz eines Behälters mit festem Volumen',
  "the specification's settling allowance: gas is warm from being compressed and settles lower":
    'Zuschlag der Vorgabe: verdichtetes Gas ist warm und kommt tiefer zur Ruhe',
  'molar mass, by definition': 'molare Masse, nach Definition',
  'molar density, by definition; the reference state through the gas model':
    'molare Dichte, nach Definition; der Bezugszustand nach dem Gasmodell',
  'ideal-gas law, with R of CODATA 2018': 'Zustandsgleichung des idealen Gases, mit R nach CODATA 2018',
  'the gas model': 'das Gasmodell',
  'compression factor, by definition': 'Realgasfaktor, nach Definition',
  'entropy of two phases in equilibrium, by their amounts (lever rule)':
    'Entropie zweier Phasen im Gleichgewicht, nach ihren Mengen (Hebelgesetz)',
  'property per amount of two phases in equilibrium, by their amounts (lever rule)':
    'molare Größe zweier Phasen im Gleichgewicht, nach ihren Mengen (Hebelgesetz)',
  'gauge pressure, by definition (ISO 80000-4:2019)': 'Überdruck, nach Definition (ISO 80000-4:2019)',
  'accuracy class: limit of error as a percentage of span (EN 837-1, from memory)':
    'Genauigkeitsklasse: Fehlergrenze in Prozent der Messspanne (EN 837-1, aus dem Gedächtnis)',
  'influence of temperature on a gauge: 0.04 % of span per kelvin from 20 °C (EN 837-1, from memory)':
    'Temperatureinfluss auf ein Manometer: 0,04 % der Messspanne je Kelvin ab 20 °C (EN 837-1, aus dem Gedächtnis)',
  'limit of error as a percentage of reading, as data sheets state it (common practice, no source)':
    'Fehlergrenze in Prozent der Ablesung, wie Datenblätter sie nennen (allgemeine Praxis, ohne Quelle)',
  'limit of error of a digital gauge, as its data sheet adds it up (common practice, no source)':
    'Fehlergrenze eines Digitalmanometers, wie sein Datenblatt sie summiert (allgemeine Praxis, ohne Quelle)',
  'Stefan–Boltzmann law for a grey shell that mirrors its surroundings; differentiated':
    'Stefan-Boltzmann-Gesetz für eine graue Behälterwand, die ihre Umgebung spiegelt; abgeleitet',
  'distance of a pressure from the allowable one, by definition':
    'Abstand eines Drucks vom zulässigen, nach Definition',
  'amount of one bubble by the amount lost in a time, at a constant rate':
    'Menge einer Blase durch die in einer Zeit verlorene Menge, bei gleichbleibendem Verlust',
  'loss at a constant rate': 'gleichbleibender Verlust',
  'molar density, by definition': 'molare Dichte, nach Definition',
  'volume of the gas released, at the conditions of the room, by that of the room':
    'Volumen des freigesetzten Gases bei den Bedingungen des Raums durch das des Raums',
  'displacement: the gas drives out its own volume of air, unmixed, until none is left':
    'Verdrängung: das Gas treibt sein eigenes Volumen Luft unvermischt hinaus, bis keine übrig ist',
  'well-mixed dilution: V dx/dt = -q x, from x_O2_before, until V_gas = q t is released':
    'Verdünnung mit voller Durchmischung: V dx/dt = -q x, von x_O2_before an, bis V_gas = q t freigesetzt ist',
  'displacement with fresh air: both drive out their own volume, and when the room has been replaced what comes in':
    'Verdrängung mit Frischluft: beide treiben ihr eigenes Volumen hinaus; ist der Raum ersetzt, gilt, was hereinkommt',
  'well-mixed dilution with fresh air: V dx/dt = Q x_O2_before - (Q + q) x, closed form at the end of the release':
    'Verdünnung mit voller Durchmischung und Frischluft: V dx/dt = Q x_O2_before - (Q + q) x, geschlossene Lösung am Ende ' +
    'der Freisetzung',
  'well-mixed dilution with fresh air alone: V dx/dt = Q (x_O2_before - x)':
    'Verdünnung mit voller Durchmischung durch Frischluft allein: V dx/dt = Q (x_O2_before - x)',
  'amounts in one volume at the two pressures, by their densities through the gas model':
    'Mengen in einem Volumen bei den beiden Drücken, nach ihren Dichten aus dem Gasmodell',
  'amount balance of one filling, well mixed before it is vented':
    'Mengenbilanz einer Füllung, vor dem Ablassen voll durchmischt',
  'mass balance of a vessel of constant volume, for each filling':
    'Massenbilanz eines Behälters mit festem Volumen, für jede Füllung',
  'EN 837-2, from memory: a gauge for steady pressure is used to 75 % of its scale':
    'EN 837-2, aus dem Gedächtnis: ein Manometer für ruhenden Druck wird bis 75 % seiner Skale verwendet',
  'ratio of temperatures of an isentropic expansion of an ideal gas: (p_amb / p_abs)^((k - 1) / k)':
    'Verhältnis der Temperaturen einer isentropen Entspannung eines idealen Gases: (p_amb / p_abs)^((k - 1) / k)',
  'ASME PCC-2, article 501, from memory: ideal gas, isentropic, work on the atmosphere included':
    'ASME PCC-2, Article 501, aus dem Gedächtnis: ideales Gas, isentrop, mit Arbeit an der Atmosphäre',
  'first law: loss of internal energy of the amount of gas, isentropic by the gas model':
    'erster Hauptsatz: Verlust der Gasmenge an innerer Energie, isentrop nach dem Gasmodell',
  'work on an atmosphere of constant pressure, p_amb (V2 - V1)':
    'Arbeit an einer Atmosphäre mit festem Druck, p_amb (V2 - V1)',
  'equivalent of TNT: ASME PCC-2, article 501, from memory':
    'TNT-Äquivalent: ASME PCC-2, Article 501, aus dem Gedächtnis',
  "Newton's law of cooling: the gas of one temperature in a shell of constant temperature":
    'Newtonsches Abkühlungsgesetz: Gas von einer Temperatur in einer Wand mit fester Temperatur',
  'first law for a rigid vessel that is filled without heat: what flows in brings its enthalpy':
    'erster Hauptsatz für einen starren Behälter, der ohne Wärme gefüllt wird: was einströmt, bringt seine Enthalpie mit',
  'mass balance of two vessels that have become one, at one temperature':
    'Stoffbilanz zweier Gefäße, die eins geworden sind, bei einer Temperatur',
  'mass balance of two vessels that become one, at one temperature':
    'Massenbilanz zweier Behälter, die einer werden, bei einer Temperatur',
  "the maker's table, linear between its rows": 'die Tabelle des Herstellers, zwischen ihren Zeilen linear',
  'at the point through which the line is drawn, the pressure stated there':
    'am Punkt, durch den die Linie gelegt ist, der dort angegebene Druck',
  'tolerance as a percentage of the gauge pressure (common practice, no source)':
    'Toleranz in Prozent des Überdrucks (allgemeine Praxis, ohne Quelle)',
  'tolerance to the lower side, by definition': 'Toleranz nach unten, nach Definition',
  'tolerance to the upper side, by definition': 'Toleranz nach oben, nach Definition',
  'a number to a step may be off by half of it (JCGM 100, F.2.2.1)':
    'eine Zahl, die auf einen Schritt angegeben ist, kann um dessen Hälfte falsch sein (JCGM 100, F.2.2.1)',
  'standard uncertainty from an expanded one, by definition (JCGM 100, 2.3.5)':
    'Standardunsicherheit aus einer erweiterten, nach Definition (JCGM 100, 2.3.5)',
  'the largest thermal expansion within its limit of error': 'die größte Wärmeausdehnung innerhalb ihrer Fehlergrenze',
  'standard uncertainty by its sensitivity (JCGM 100, 5.1.3)':
    'Standardunsicherheit mal ihrer Empfindlichkeit (JCGM 100, 5.1.3)',
  'standard uncertainty of the mean of independent readings (JCGM 100, 4.2.3)':
    'Standardunsicherheit des Mittels unabhängiger Ablesungen (JCGM 100, 4.2.3)',
  'interval of 95 %, as probable below as above: its half width is that of the distribution of the sum of all contributions (JCGM 101, 7.7)':
    'Intervall von 95 %, darunter so wahrscheinlich wie darüber: seine halbe Breite ist die der Verteilung der Summe aller Beiträge (JCGM 101, 7.7)',
  'expanded uncertainty as if the sum were normal, for comparison (JCGM 100, 6.2)':
    'erweiterte Unsicherheit, als wäre die Summe normalverteilt, zum Vergleich (JCGM 100, 6.2)',
  'combined standard uncertainty of independent errors (JCGM 100, 5.1.2)':
    'kombinierte Standardunsicherheit unabhängiger Fehler (JCGM 100, 5.1.2)',
  'distance of a reading to the lower limit, negative below it, by definition':
    'Abstand einer Ablesung zur unteren Grenze, darunter negativ, nach Definition',
  'distance of a reading to the upper limit, negative above it, by definition':
    'Abstand einer Ablesung zur oberen Grenze, darüber negativ, nach Definition',
  'distance of a reading to the lower limit of the vessel as it is warm, negative below it':
    'Abstand einer Ablesung zur unteren Grenze des Behälters, wie er warm ist, darunter negativ',
  'distance of a reading to the upper limit of the vessel as it is warm, negative above it':
    'Abstand einer Ablesung zur oberen Grenze des Behälters, wie er warm ist, darüber negativ',
  'a margin in standard uncertainties: a table of the normal distribution tells about how likely more is':
    'ein Abstand in Standardunsicherheiten: eine Tafel der Normalverteilung sagt ungefähr, wie wahrscheinlich mehr ist',
  'margin beyond the guard band that the accepted risk asks for, from the distribution of the sum (JCGM 106, 8.3)':
    'Abstand über den Sicherheitsabstand hinaus, den das zugelassene Risiko verlangt, aus der Verteilung der Summe (JCGM 106, 8.3)',
  'standard deviation of a rectangle whose half width is the limit of an error by its sensitivity (JCGM 100, 4.3.7)':
    'Standardabweichung eines Rechtecks, dessen halbe Breite die Grenze eines Fehlers mal seiner Empfindlichkeit ist (JCGM 100, 4.3.7)',
  'deviation of a reading from its target, by definition': 'Abweichung einer Ablesung vom Sollwert, nach Definition',
  'distance to the nearer limit, negative outside, by definition':
    'Abstand zur näheren Grenze, außerhalb negativ, nach Definition',
  'correction of a calibration certificate, by definition (JCGM 200, 2.53)':
    'Berichtigung eines Kalibrierscheins, nach Definition (JCGM 200, 2.53)',
  'slope of the target with temperature: of the gas at constant density, or of the table':
    'Steigung des Sollwerts mit der Temperatur: des Gases bei fester Dichte, oder der Tabelle',
  'line of constant density, differentiated: an error of the pressure where it is stated':
    'Linie fester Dichte, abgeleitet: ein Fehler des Drucks, wo er angegeben ist',
  'line of constant density, differentiated: an error of the temperature where it is stated':
    'Linie fester Dichte, abgeleitet: ein Fehler der Temperatur, wo sie angegeben ist',
  'line of constant density, differentiated: a relative error of the density':
    'Linie fester Dichte, abgeleitet: ein relativer Fehler der Dichte',
  'thermal expansion of a vessel of one material, to first order':
    'Wärmeausdehnung eines Behälters aus einem Werkstoff, in erster Ordnung',
  "the maker's table, linear between its rows, differentiated: an error of the row at T_1":
    'die Tabelle des Herstellers, zwischen ihren Zeilen linear, abgeleitet: ein Fehler der Zeile bei T_1',
  'variance of a difference of two correlated errors (JCGM 100, 5.2)':
    'Varianz einer Differenz zweier zusammenhängender Fehler (JCGM 100, 5.2)',
  'the least pressure that rounds to a printed one, by definition of rounding to nearest':
    'der kleinste Druck, der auf einen gedruckten gerundet wird, nach Definition des Rundens',
  'the greatest pressure that rounds to a printed one, by definition of rounding to nearest':
    'der größte Druck, der auf einen gedruckten gerundet wird, nach Definition des Rundens',
  'relative uncertainty of density, as the source of the gas model states it':
    'relative Unsicherheit der Dichte, wie die Quelle des Gasmodells sie angibt',
  'a term of the residual Helmholtz energy, differentiated by the logarithm of the reduced density: Span et al. (2000), J. Phys. Chem. Ref. Data 29, 1361':
    'ein Glied der residuellen Helmholtz-Energie, nach dem Logarithmus der reduzierten Dichte abgeleitet: Span et al. (2000), J. Phys. Chem. Ref. Data 29, 1361',
  'attraction at a temperature: Peng and Robinson (1976), Ind. Eng. Chem. Fundam. 15, 59':
    'Anziehung bei einer Temperatur: Peng und Robinson (1976), Ind. Eng. Chem. Fundam. 15, 59',
  'compression factor, one more than the derivative of the residual Helmholtz energy: Span et al. (2000), J. Phys. Chem. Ref. Data 29, 1361':
    'Realgasfaktor, um eins größer als die Ableitung der residuellen Helmholtz-Energie: Span et al. (2000), J. Phys. Chem. Ref. Data 29, 1361',
  'compression factor of an ideal gas, by definition': 'Realgasfaktor eines idealen Gases, nach Definition',
  'compression factor: Peng and Robinson (1976), Ind. Eng. Chem. Fundam. 15, 59':
    'Realgasfaktor: Peng und Robinson (1976), Ind. Eng. Chem. Fundam. 15, 59',
  'inverse reduced temperature: Span et al. (2000), J. Phys. Chem. Ref. Data 29, 1361':
    'inverse reduzierte Temperatur: Span et al. (2000), J. Phys. Chem. Ref. Data 29, 1361',
  'pressure of a gas, by definition of its compression factor':
    'Druck eines Gases, nach Definition seines Realgasfaktors',
  'reduced density: Span et al. (2000), J. Phys. Chem. Ref. Data 29, 1361':
    'reduzierte Dichte: Span et al. (2000), J. Phys. Chem. Ref. Data 29, 1361',
  'sum of the terms: Span et al. (2000), J. Phys. Chem. Ref. Data 29, 1361':
    'Summe der Glieder: Span et al. (2000), J. Phys. Chem. Ref. Data 29, 1361',
  'residual of a printed pressure, by definition': 'Rest eines gedruckten Drucks, nach Definition',
  'difference of two gauge pressures, by definition': 'Differenz zweier Überdrücke, nach Definition',
  'difference of two absolute pressures, by definition': 'Differenz zweier absoluter Drücke, nach Definition',
  'slope of pressure with temperature at constant density':
    'Steigung des Drucks mit der Temperatur bei konstanter Dichte',
  'fresh air by volumes of the room, at so many an hour':
    'Frischluft in Volumen des Raums, bei so vielen in der Stunde',
  'first law: without heat the work is the loss of internal energy':
    'erster Hauptsatz: ohne Wärme ist die Arbeit der Verlust an innerer Energie',
  'energy of the gas less the work on the atmosphere': 'Energie des Gases weniger der Arbeit an der Atmosphäre',
  'first law for a rigid vessel that feeds another without heat: what it has lost the other has':
    'erster Hauptsatz für einen starren Behälter, der ohne Wärme einen anderen füllt: was er verloren hat, hat der andere',
  'first law for a rigid vessel that is filled from another without heat':
    'erster Hauptsatz für einen starren Behälter, der ohne Wärme aus einem anderen gefüllt wird',
  'internal energy by the amount of gas, by definition': 'innere Energie je Stoffmenge, nach Definition',
  'what counts as settled, above the settled pressure': 'was als ausgeglichen gilt, über dem ausgeglichenen Druck',
  'what counts as settled, below the settled pressure': 'was als ausgeglichen gilt, unter dem ausgeglichenen Druck',
  'amount that the accumulator gains, and amount that the kit takes and loses':
    'Stoffmenge, die der Speicher gewinnt, und Stoffmenge, die die Füllvorrichtung nimmt und verliert',
  'pressure wanted, and the difference that the regulator needs':
    'gewünschter Druck und der Unterschied, den der Druckminderer braucht',
  'mass balance of a vessel of constant volume, down to the higher of two pressures':
    'Massenbilanz eines Behälters von konstantem Volumen, bis zum höheren zweier Drücke',
  'whole accumulators, as many as are counted at the most': 'ganze Speicher, höchstens so viele, wie gezählt werden',
  'a mistake: the law of an ideal gas at constant volume, with degrees Celsius for kelvins':
    'ein Fehler: das Gesetz eines idealen Gases bei konstantem Volumen, mit Grad Celsius statt Kelvin',
  'a mistake: the ideal-gas law, with degrees Celsius for kelvins':
    'ein Fehler: das ideale Gasgesetz, mit Grad Celsius statt Kelvin',
};

export const GERMAN_ABOUT: Readonly<Record<string, string>> = {
  accumulator: 'Speicher',
  'accumulator afterwards': 'Speicher danach',
  'accumulator and kit': 'Speicher und Füllvorrichtung',
  add: 'nachfüllen',
  after: 'danach',
  'after the fall': 'nach dem Abfall',
  'after the time': 'nach der Zeit',
  'after {n} min': 'nach {n} min',
  'all contributions': 'alle Beiträge',
  'allowable pressure': 'zulässiger Druck',
  barometer: 'Barometer',
  before: 'davor',
  'before draining': 'vor dem Entleeren',
  'before the kit': 'vor dem Anschließen der Füllvorrichtung',
  bottle: 'Flasche',
  'bottle at 15 °C': 'Flasche bei 15 °C',
  bubble: 'Blase',
  charged: 'gefüllt',
  conversion: 'Umrechnung',
  displacement: 'Verdrängung',
  emissivity: 'Emissionsgrad',
  'equation of state': 'Zustandsgleichung',
  'explaining temperature': 'erklärende Temperatur',
  filled: 'gefüllt',
  filling: 'Füllen',
  'filling {n}': 'Füllung {n}',
  gas: 'Gas',
  gauge: 'Manometer',
  'gauge step': 'Schritt des Manometers',
  'gauge temperature': 'Temperatur des Manometers',
  hottest: 'am heißesten',
  'in service': 'im Betrieb',
  interval: 'Intervall',
  'internal energy after': 'innere Energie danach',
  kit: 'Füllvorrichtung',
  'liquid and vapour': 'Flüssigkeit und Dampf',
  loss: 'Verlust',
  'lower limit': 'untere Grenze',
  'most now': 'höchstens jetzt',
  'nominal point': 'Nennpunkt',
  'printed ambient': 'gedruckter Umgebungsdruck',
  'printed pressure': 'gedruckter Druck',
  'printed temperature': 'gedruckte Temperatur',
  read: 'abgelesen',
  reading: 'Ablesung',
  'reading referred': 'bezogene Ablesung',
  'reference point': 'Bezugspunkt',
  'reference state of the volume': 'Bezugszustand des Volumens',
  release: 'Freisetzung',
  'release, mixed': 'Freisetzung, gemischt',
  'release, mixed with fresh air': 'Freisetzung, mit Frischluft gemischt',
  'release, unmixed': 'Freisetzung, ungemischt',
  'release, unmixed with fresh air': 'Freisetzung, ungemischt mit Frischluft',
  room: 'Raum',
  'saturated vapour': 'gesättigter Dampf',
  settled: 'ausgeglichen',
  'shell to gas': 'Behälterwand gegen Gas',
  state: 'Zustand',
  stop: 'Abschalten',
  supply: 'Vorrat',
  target: 'Sollwert',
  thermometer: 'Thermometer',
  'thermometer step': 'Schritt des Thermometers',
  tolerance: 'Toleranz',
  'upper limit': 'obere Grenze',
  vent: 'ablassen',
  vented: 'abgelassen',
  ventilation: 'Lüftung',
  vessel: 'Behälter',
  'volume after': 'Volumen danach',
  'well mixed': 'voll durchmischt',
  'above the residual pressure': 'über dem Restdruck',
  'bottle less accumulator': 'Flasche weniger Speicher',
  'bottle afterwards': 'Flasche danach',
  coldest: 'am kältesten',
  expansion: 'Entspannung',
  fall: 'Abfall',
  'just drained': 'gerade entleert',
  lost: 'verloren',
  'near enough': 'nahe genug',
  'pressure wanted': 'gewünschter Druck',
  'residual pressure': 'Restdruck',
  regulator: 'Druckminderer',
  'supply after': 'Vorrat danach',
  '{about}, adiabatic': '{about}, adiabat',
  '{about}, isothermal': '{about}, isotherm',
  '{about}, in time': '{about}, in der Zeit',
  '{about}, step {n}': '{about}, Schritt {n}',
  '{about}, stage {n}': '{about}, Stufe {n}',
  '{about}, computed stop': '{about}, berechnetes Abschalten',
  '{about}, to settle on the target': '{about}, um auf dem Sollwert zu stehen',
  '{about}, as stated': '{about}, wie angegeben',
  '{about}, by the ideal gas': '{about}, nach dem idealen Gas',
  '{about}, by the gas model': '{about}, nach dem Gasmodell',
  '{about}, on the atmosphere': '{about}, an der Atmosphäre',
  '{about}, without the atmosphere': '{about}, ohne die Atmosphäre',
  '{about}, reference': '{about}, Bezugspunkt',
  '{about}, row {n}': '{about}, Zeile {n}',
};
