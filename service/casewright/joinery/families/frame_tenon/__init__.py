"""The tenon of a frame's rail in its stile, with the groove for a panel and the haunch that fills its end."""
