"""What the cards and labels of the benchmark say: invented objects of the Port Merrow Museum."""

from __future__ import annotations

ADJECTIVES = (
    "pressed", "moulded", "carved", "painted", "glazed", "brass", "copper", "silver-plated",
    "cast-iron", "embroidered", "woven", "printed", "hand-coloured", "lacquered", "engraved", "tin",
    "enamelled", "turned", "inlaid", "stoneware",
)  # fmt: skip
NOUNS = (
    "cream jug", "pocket watch", "butter stamp", "baptism gown", "clay pipe", "school slate",
    "oil lamp", "postcard album", "sewing box", "coin weight", "drinking glass", "tobacco jar",
    "prayer book", "door lock", "ship model", "photograph of the harbour",
    "medal of the fire brigade", "weaving shuttle", "tea caddy", "ration book",
)  # fmt: skip
NOTES = (
    "chip at spout", "handle glued in 1974", "loose lid, keep with base", "red rot on spine",
    "see also box 311", "flaking paint", "pair, second in 0412", "on loan until May",
    "active corrosion", "label under foot", "fragile rim", "2 parts", "insect damage, treated",
    "do not unfold", "light 50 lux max", "inscribed on reverse",
)  # fmt: skip
TITLES = {
    "pl": (
        "Dzbanek na śmietankę, fajans", "Zegarek kieszonkowy ze srebra",
        "Księga cechu szewców, oprawa skórzana", "Łyżka cynowa z żółtym uchwytem",
        "Fotografia żołnierzy, Łódź 1916", "Świecznik mosiężny, para", "Święty obraz na szkle",
        "Gęsie pióro i kałamarz",
    ),
    "el": (
        "Πήλινο αγγείο με γεωμετρικά σχέδια", "Χάλκινο νόμισμα, Αθήνα",
        "Υφαντό με κόκκινα σχέδια", "Φωτογραφία λιμανιού", "Ξύλινη σφραγίδα ψωμιού",
        "Ασημένιο κόσμημα με πέτρες", "Κεραμικό λυχνάρι", "Εικόνα σε ξύλο",
    ),
    "ar": (
        "إبريق نحاسي منقوش", "مخطوطة قديمة بخط اليد", "صندوق خشبي مطعم بالصدف",
        "مصباح زيت من الفخار", "قطعة نسيج حريرية مطرزة", "خنجر فضي مع غمده",
        "طبق خزفي أزرق وأبيض", "صورة فوتوغرافية للسوق",
    ),
    "ja": (
        "染付茶碗、江戸時代後期", "漆塗りの印籠と根付", "木版画「東海道五十三次」",
        "鉄製の茶釜、蓋付き", "絹の着物、菊の文様", "象牙の櫛、一部欠損", "竹籠の花入れ",
        "古い写真帖、明治三十年",
    ),
    "hi": (
        "पीतल का दीपक, मंदिर से", "लकड़ी की नक्काशीदार मूर्ति", "रेशमी साड़ी का टुकड़ा",
        "ताम्रपत्र पर लेख", "मिट्टी का घड़ा, चित्रित", "चाँदी का सिक्का, मुग़ल काल",
        "पुरानी हस्तलिखित पुस्तक", "हाथी दाँत की कंघी",
    ),
}  # fmt: skip
FOREIGN_NOTES = {
    "pl": ("ucho klejone", "pęknięcie u podstawy", "część zaginiona"),
    "el": ("μικρή ρωγμή", "εύθραυστο", "δύο κομμάτια"),
    "ar": ("قابل للكسر", "جزء مفقود", "مقبض مرمم"),
    "ja": ("縁に欠け", "取扱注意", "蓋は別箱"),
    "hi": ("किनारा टूटा", "सावधानी से", "दो भाग"),
}
COLLECTIONS = (
    "Household and kitchen", "Textiles, flat", "Guilds and trades", "Photographs and paper",
    "Coins, medals, seals", "Far East cabinet", "Church silver", "Toys and school",
)  # fmt: skip
PACKERS = ("R. Vane", "J. Penrose", "T. Ansty", "M. Hollis", "Søren Quay", "L. Müller-Reed")
WARNINGS = (
    ("fragile", "Fragile", "Lift with both hands under the base, never by the handle."),
    ("gloves", "Wear gloves", "Nitrile gloves only. Metal and photographs show finger marks."),
    ("keep-upright", "Keep upright", "Loose parts lie on top of the padding. Keep the lid level."),
    ("keep-dry", "Keep dry", "Relative humidity 45 to 55 %. Report any wet cardboard at once."),
    ("light-sensitive", "Light-sensitive", "Open only below 50 lux, and no longer than you need."),
    ("heavy-end", "Heavy end", "Most of the weight is at one end. Ask the desk before you lift."),
)
# Of twenty: eleven English, two each of Polish, Greek, Arabic and Japanese, one Hindi.
LANGUAGES = ("en",) * 11 + ("pl", "el", "ar", "ja") * 2 + ("hi",)
ADDRESS = "https://collections.portmerrow.example"
