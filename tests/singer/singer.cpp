namespace luft::singer {}
