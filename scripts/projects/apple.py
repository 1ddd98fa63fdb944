def check():
    return []
