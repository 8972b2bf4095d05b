"""Every id of a page stands once: what is shared, like the hatches, is defined once and never inside what may be folded."""

import re
from collections import Counter

from woodlib.commission import chosen_brief, commission_of
from woodlib.handout.client_page import client_page, shop_page


def test_every_id_of_a_page_stands_once():
    commission = commission_of(chosen_brief())
    for page in (client_page(commission), shop_page(commission)):
        ids = Counter(re.findall(r'\sid="([^"]+)"', re.sub(r"<script\b.*?</script>", "", page, flags=re.DOTALL)))
        assert [name for name, count in ids.items() if count > 1] == []
        assert page.index("<pattern") < page.index("<main")
        wanted = set(re.findall(r"url\(#([\w-]+)\)", page))
        assert {name for name in wanted if name.startswith("h-")} <= set(ids)
