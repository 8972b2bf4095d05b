"""No two sentences of a commission disagree: verdict, reason, what would change it, the short answer and the four lines."""

from woodlib.brief import read_brief
from woodlib.commission import commission_of
from woodlib.commission.in_four_lines import four_lines
from woodlib.commission.in_short import opening
from woodlib.restraint.measures import odds_words
from woodlib.ways.judge import DECIDERS


def test_what_is_said_of_glue_is_said_with_one_voice(matrix_brief):
    commission = commission_of(read_brief(matrix_brief))
    for verdict in commission.verdicts:
        if verdict.unfit:
            assert not verdict.allowed and verdict.risk == "does not fit" and "; it takes " in verdict.reason
            continue
        if verdict.way.holds_width:
            assert verdict.reason.startswith("Glue is allowed here" if verdict.allowed else "Glue is refused")
        assert verdict.allowed == (verdict.risk == "safe") == (round(float(verdict.judged.level)) == 0)
    glued = commission.glued
    if glued is None:
        return
    said = commission.would_change
    assert said.startswith("The glued border is allowed in this house") == glued.allowed
    assert not (glued.allowed and "No house" in said)
    told = f"{opening(commission)} {four_lines(commission)}"
    likely = odds_words(glued.panel.chance.sound.likely) if glued.panel else ""
    assert ("lued across its ends" in told) or glued.allowed or commission.built is glued
    if likely and not glued.allowed and commission.built.allowed:
        assert likely in told
    decides = DECIDERS[round(float(glued.judged.decides))]
    assert ("squeezed by about" in glued.reason) == (decides == "squeezed")
    assert ("along its own grain" in glued.reason) == (decides == "border")
    assert ("glue line are sheared" in glued.reason) == (decides == "glue")
