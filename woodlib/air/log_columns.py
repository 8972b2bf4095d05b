"""What the heading of a column says: the quantity, its unit, whose sensor it is, and whether that stands outdoors."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Sequence

# Beginnings of words, without accents; a leading "=" asks for the whole word, "*" for any part of it.
_WORDS = {
    "time": "=time =date =datetime =timestamp =datum =zeit uhrzeit zeitst zeitp =heure horodat =temps =fecha =hora "
    "=data =ora =tijd =tid tidpunkt =dato klokke =aika paivam =czas =recorded 时间 時間 日時 日期 время дата",
    "temperature": "=t =ta temperat tempc tempf =temp =temps lampot =celsius =fahrenheit dry 温度 気温 температ teplot "
    "homerse sicakl θερμο *temperat *lampotil",
    "humidity": "=rh rh =hum humid humed umid luftfeucht feucht =rf =rlf =hr =ur =lf vocht luchtvocht luftfukt fukt "
    "luftfugt fugt kosteus =relative wilgot 湿度 влажн vlhk paratart =nem υγρασ *feucht *fuktig *fugtig *vochtig "
    "*kosteus",
}
_NOT = {
    "time": "zone elapsed uptime",
    "temperature": "dew taupunkt rosee rocio rugiada dauw dagg wet set target soll cpu feels apparent chill heat index "
    "=max =min =maximum =minimum alarm limit offset",
    "humidity": "absol =abs vapour vapor specific spezif ratio dew set target soll =gm gm3 mixing soil =max =min =maximum =minimum alarm "
    "limit offset",
}
_OUTDOORS = (
    "=out outdoor outside outd =outs extern exter =ext aussen draussen dehors fuera estern fuori buiten utomhus =ute "
    "utend utetemp udend =ude =ulko ulkol ulkoi ulkona zewn venk =kint kulso =dis weather wetter meteo garden garten "
    "jardin balcon balkon terrac terras patio yard 室外 屋外 外気 실외 улиц улич наруж надвор зовн εξω "
    "afar =piha pihal dwor zunaj zunan =vani vanjsk vonku vonkaj vnejs lauk =oues valis חוץ خارج बाहर"
)
_SENSOR = "=id sensor device gerat geraet channel kanal =ch probe location =room =raum =name =mac serial =node station entity topic"
_MARKED_UNIT = re.compile(r"[°º˚*]\s*[CF]\b|℃|℉|\bdeg\s*[CF]\b|[(\[]\s*[CF]\s*[)\]]")
_FAHRENHEIT = {"f", "degf", "fahrenheit", "tempf", "℉"}
_CELSIUS = {"c", "degc", "celsius", "tempc", "℃"}
_UNIT_WORDS = _FAHRENHEIT | _CELSIUS | {"deg", "percent", "rel", "relative", "air", "avg", "average", "mean", "value"}


def words_of(text: str) -> list[str]:
    """Lower-case words of a heading, without accents, degree signs and punctuation.

    >>> words_of("Température_°C"), words_of("TempOut2")
    (['temperature', 'c'], ['temp', 'out', '2'])
    """
    text = re.sub(r"(?<=[a-z]{2})(?=[A-Z])|(?<=[a-z]{2})(?=\d)", " ", text.replace("ß", "ss").replace("g/m", "gm"))
    text = re.sub(r"\b([A-Za-z])\.\s?([A-Za-z])\b\.?", r"\1\2", text)  # r. F.
    plain = "".join(c for c in unicodedata.normalize("NFKD", text) if not unicodedata.combining(c)).lower()
    return re.findall(r"[^\W_]+", plain.replace("ł", "l"))


def _any_word(words: Sequence[str], vocabulary: str) -> bool:
    entries = vocabulary.split()
    whole = {entry[1:] for entry in entries if entry.startswith("=")}
    parts = [entry[1:] for entry in entries if entry.startswith("*")]
    starts = tuple(entry for entry in entries if entry[0] not in "=*")
    return any(word in whole or word.startswith(starts) or any(part in word for part in parts) for word in words)


def kinds_of(cell: str) -> set[str]:
    """What a heading cell may be: time, temperature, humidity; usually one of them or none.

    >>> kinds_of("rel. Luftfeuchte [%]"), kinds_of("Dew point temperature"), kinds_of("Sensor 1 [°C]")
    ({'humidity'}, set(), {'temperature'})
    """
    if len(cell) > 80 or re.search(r"\d{4}|\d:\d", re.sub(r"(GMT|UTC)\S*|S/N.*", "", cell)):
        return set()  # a sentence above the table, or a row of data
    if re.match(r"[-+]?\d+(?:[.,]\d+)?\W*[%CF]?", cell) and re.search(r"\d\W*(?:[CF]|%.*)?$", cell):
        return set()  # a reading
    words = words_of(cell)
    found = {kind for kind in _WORDS if _any_word(words, _WORDS[kind]) and not _any_word(words, _NOT[kind])}
    if found >= {"time", "temperature"} and "temps" in words:
        return {"time"} if "heure" not in words else found - {"temperature"}
    if not found and _MARKED_UNIT.search(cell) and not _any_word(words, _NOT["temperature"]):
        return {"temperature"}
    return found - {"time"} if len(found) > 1 else found


def heading_score(cells: Sequence[str], named: Iterable[str]) -> int:
    """How much a row looks like the heading: kinds recognised, and columns the caller named."""
    kinds: set[str] = set().union(*(kinds_of(cell) for cell in cells))
    lowered = {cell.strip().lower() for cell in cells}
    return len(kinds) + 3 * sum(name.strip().lower() in lowered for name in named)


def outdoors(text: str) -> bool:
    """True when a name says that the sensor does not stand in the room.

    >>> [outdoors(name) for name in ("Temp out", "Außentemperatur", "T_ext", "Extérieur", "Living room")]
    [True, True, True, True, False]
    """
    return _any_word(words_of(text), _OUTDOORS)


def sensor_of(heading: str) -> str:
    """Whose column it is: the heading without the words for quantity and unit.

    >>> sensor_of("Temperature kitchen [°C]"), sensor_of("RH kitchen"), sensor_of("Temp")
    ('kitchen', 'kitchen', '')
    """
    known = " ".join(_WORDS.values())
    bare = _MARKED_UNIT.sub(" ", heading)
    return " ".join(word for word in words_of(bare) if not _any_word([word], known) and word not in _UNIT_WORDS)


def names_a_sensor(heading: str) -> bool:
    """True for the heading of a column that says which sensor a row is from."""
    return _any_word(words_of(heading), _SENSOR) and not kinds_of(heading)


def unit_in(*texts: str) -> str | None:
    """Temperature unit named in a heading or a units row: "degC", "degF", or None.

    >>> unit_in("Temp (°F)"), unit_in("Temperatur", "[°C]"), unit_in("Temp")
    ('degF', 'degC', None)
    """
    words = {word for text in texts for word in words_of(text)}
    if bool(words & _FAHRENHEIT) == bool(words & _CELSIUS):
        return None
    return "degF" if words & _FAHRENHEIT else "degC"
